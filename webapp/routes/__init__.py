"""One file a resource, its pages and its JSON side by side, in the order of the menu."""
