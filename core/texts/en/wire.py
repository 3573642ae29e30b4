"""Words of the wire: sizes, lengths, spools."""

TEXTS: dict[str, str] = {
    "wire.no_size": "the wire needs a diameter above zero; mike it at three places and type the mean",
    "wire.no_ring": "each ring needs a centre-line diameter above zero, such as 4.25in",
    "wire.trimming": "the allowance for trimming cannot be below zero; type 0in for none",
    "wire.material.stainless-304": "304 stainless, annealed",
    "wire.material.stainless-304-spring": "304 stainless, spring temper",
    "wire.material.copper": "copper",
}
