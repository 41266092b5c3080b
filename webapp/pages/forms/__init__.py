"""What a browser sent, as typed values; what was typed is kept, and every error stands beside its field."""
