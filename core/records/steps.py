"""The steps of a job in their order, each with its cautions. *Common practice, no source.*"""

from dataclasses import dataclass

from core.texts import text


@dataclass(frozen=True, slots=True)
class Step:
    """One step: its record in a job, and the cautions that belong to it."""

    key: str
    cautions: tuple[str, ...] = ()

    @property
    def record(self) -> str:
        """Record of its tick."""
        return f"step/{self.key}"

    @property
    def words(self) -> str:
        """What to do."""
        return text(f"records.step.{self.key}")

    @property
    def caution_words(self) -> tuple[str, ...]:
        """What to take care of."""
        return tuple(text(f"records.caution.{each}") for each in self.cautions)


STEPS = (
    Step("deck_finished"),
    Step("wire_miked"),
    Step("test_groove", ("makers_data", "eyes")),
    Step("groove_cut", ("eyes", "machines")),
    Step("groove_measured"),
    Step("wire_cut", ("eyes", "wire_ends")),
    Step("ends_square", ("wire_ends",)),
    Step("pressed_in", ("eyes", "wire_ends")),
    Step("tapped_down", ("eyes",)),
    Step("height_measured"),
    Step("sheet_chosen", ("makers_data",)),
    Step("trial_squeeze", ("sheet_edges",)),
    Step("clearances", ("makers_data",)),
    Step("sheet_annealed", ("hot_sheet", "sheet_edges")),
    Step("torqued", ("makers_data", "fasteners")),
    Step("run", ("machines", "hot_engine")),
    Step("retorqued_cold", ("fasteners", "hot_engine")),
    Step("evidence_read", ("water", "sheet_edges")),
)
