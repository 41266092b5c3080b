"""One frozen value per page, every field with a sentence, and the pure function that makes it."""
