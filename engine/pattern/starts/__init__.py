"""Starting points: charts that are made from a few choices, and what is worth knowing of each."""
