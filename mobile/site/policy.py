"""What a page of ours may load and whom it may talk to: its own origin, nobody else."""

DIRECTIVES = {
    "default-src": "'self'",
    # WebAssembly is compiled here; no text is ever run as code.
    "script-src": "'self' 'wasm-unsafe-eval'",
    "worker-src": "'self'",
    # The screen's engine adds style elements of its own.
    "style-src": "'self' 'unsafe-inline'",
    "img-src": "'self' data: blob:",
    "font-src": "'self' data:",
    "connect-src": "'self' data: blob:",
    "object-src": "'none'",
    "base-uri": "'self'",
    "form-action": "'none'",
}
ONLY_IN_HEADER = {"frame-ancestors": "'none'"}


def in_page() -> str:
    """Policy for the page's own meta tag."""
    return "; ".join(f"{name} {value}" for name, value in DIRECTIVES.items())


def headers() -> dict[str, str]:
    """Headers of every response, from the server and from the service worker."""
    directives = {**DIRECTIVES, **ONLY_IN_HEADER}
    return {
        "Content-Security-Policy": "; ".join(f"{n} {v}" for n, v in directives.items()),
        "Referrer-Policy": "no-referrer",
        "X-Content-Type-Options": "nosniff",
    }
