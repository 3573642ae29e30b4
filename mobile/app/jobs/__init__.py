"""Jobs on the screen: every engine with its cylinders, readings and decisions."""
