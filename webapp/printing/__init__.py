"""The booklet's way to paper: HTML, PDF, and prints in a process of their own."""
