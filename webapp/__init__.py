"""Everything of Ropewright that touches the world: the web app, its storage, printing and command line."""
