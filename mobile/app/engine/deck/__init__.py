"""The deck: map, heights from readings across two wires, face, and planning the cut."""
