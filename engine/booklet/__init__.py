"""What is sold: sheets, guides and the composed booklet."""
