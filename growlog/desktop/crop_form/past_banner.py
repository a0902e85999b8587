"""What was decided when this cultivar was grown before, shown where it is sown again."""

from collections.abc import Sequence

from growlog.desktop.look.widgets import Banner
from growlog.desktop.review.wording import quoted_line
from growlog.services.decisions import PastDecision
from growlog.words import say, show_day


class PastBanner(Banner):
    """The newest decision with its figures; hidden where there is none."""

    def __init__(self) -> None:
        super().__init__(can_close=False)
        self.setObjectName("pastDecision")
        self.hide()

    def show_decisions(self, decisions: Sequence[PastDecision]) -> None:
        """The decisions on earlier crops of the cultivar, the newest first."""
        self.setVisible(bool(decisions))
        if decisions and decided_text(decisions) != self.sentence:
            self.show_message(decided_text(decisions), "inform")


def decided_text(decisions: Sequence[PastDecision]) -> str:
    """The newest decision in sentences, and how many older ones there are."""
    newest = decisions[0]
    parts = [newest.sentence]
    if newest.decision.figures:
        day, figures = show_day(newest.decision.decided_on), quoted_line(newest.decision.figures)
        parts.append(say("As it stood on {day}: {figures}.", day=day, figures=figures))
    if len(decisions) > 1:
        parts.append(say("Decided before, too: {names}.", names=", ".join(d.crop_name for d in decisions[1:])))
    return " ".join(parts)
