"""What the screens show, as plain values: testable without a page."""
