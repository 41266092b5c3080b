"""Line drawings of the hand at work: threading, stitches, joins, ends and findings, for the guides of a booklet."""
