"""What must be right before a booklet is published, judged by what its PDF says when it is read back."""
