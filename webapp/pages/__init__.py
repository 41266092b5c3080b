"""The pages: values that templates show, forms that browsers send, and how the one meets the other."""
