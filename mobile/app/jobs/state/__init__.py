"""What the jobs' screens show, as plain values: testable without a page."""
