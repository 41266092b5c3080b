"""Studio pictures as image files, and the folder that keeps them."""
