TEXTS: dict[str, str] = {}
