"""Photographs and drawings as charts: laid round the rope, their colours found, each bead given the nearest."""
