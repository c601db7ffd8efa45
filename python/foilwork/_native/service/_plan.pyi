import os
from collections.abc import Mapping, Sequence
from typing import Any, Literal, final

from foilwork import _words, planned
from foilwork._native.finding import Finding
from foilwork._native.shop import Shop
from foilwork._native.source._trail import TracedResult

__all__ = [
    "Plan",
    "plan",
    "plan_file",
    "service_schema",
]

@final
class Plan:
    """A service plan: what to weigh, in which order, what was checked, what it costs.

    Made by :func:`plan`. ``str(plan)`` is the bench sheet; its parts are objects of ``foilwork.planned``. Two plans of one
    file are equal; a plan pickles as its file and what was known beside it.

    Examples:
        >>> from foilwork import plan_file
        >>> nape = plan_file("examples/soft-gradient.toml").mixes[0]
        >>> nape.name, [part.weigh_g for part in nape.bowls[0].parts]
        ('nape', [15.0, 30.0, 1.4])
        >>> low, best, high = nape.on_hair_ww_percent
        >>> round(best, 2)
        3.88
    """

    @property
    def blocked(self) -> bool:
        """Whether any finding says stop: then do not begin."""
    @property
    def booking(self) -> planned.Booking:
        """What to book it as, and what the price list says for it."""
    @property
    def cautions(self) -> tuple[planned.Caution, ...]:
        """Cautions for what is in the bowls."""
    @property
    def chair(self) -> planned.ChairTime:
        """How long the chair is taken."""
    @property
    def colour(self) -> tuple[planned.SectionColour, ...]:
        """What each section needs of colour."""
    @property
    def colourist(self) -> str | None:
        """Who works."""
    @property
    def consulted(self) -> planned.SaidBefore | None:
        """What was said before the service, held against the plan; absent where the file has no consultation."""
    @property
    def contrasts(self) -> tuple[planned.Contrast, ...]:
        """How far sections that lie beside each other are apart."""
    @property
    def day(self) -> planned.DayPlan | None:
        """Who does what when, in the order of the sheet and in the best order; absent for more than 40 sections."""
    @property
    def defaults(self) -> tuple[planned.DefaultUsed, ...]:
        """Defaults that were used because the file did not say."""
    @property
    def findings(self) -> tuple[Finding, ...]:
        """Checks, the worst first."""
    @property
    def first_steps(self) -> tuple[planned.FirstStep, ...]:
        """Steps before the colour, planned or asked for; the planned ones come before the running order."""
    @property
    def foilwork(self) -> str:
        """Version of foilwork that made it."""
    @property
    def format(self) -> int:
        """Version of the form of this data."""
    @property
    def guest(self) -> str | None:
        """A code for the guest."""
    @property
    def habits(self) -> planned.Habits:
        """How the shop writes; it changes sheets and cards, no number."""
    @property
    def hair(self) -> planned.Hair:
        """The hair as stated."""
    @property
    def head(self) -> planned.HeadPlan:
        """Hair and foils, section by section, and how the head will read."""
    @property
    def jurisdiction(self) -> _words._Jurisdiction | None:
        """Whose law the limits are from."""
    @property
    def lift(self) -> tuple[planned.SectionLift, ...]:
        """How light each lightened section gets, how fast, how sure."""
    @property
    def mixes(self) -> tuple[planned.Mix, ...]:
        """What to mix, in the running order."""
    @property
    def money(self) -> planned.MoneyPlan | None:
        """What it costs and what to charge; absent without prices."""
    @property
    def not_computed(self) -> tuple[planned.NotComputed, ...]:
        """What a reader might look for and will not find, with the reason."""
    @property
    def notes(self) -> str | None:
        """Notes of the file."""
    @property
    def order(self) -> tuple[planned.Step, ...]:
        """The running order."""
    @property
    def order_basis(self) -> _words._OrderBasis:
        """Whose order the running order is."""
    @property
    def start(self) -> str:
        """When it starts, as the file says."""
    @property
    def stated_not_used(self) -> tuple[planned.StatedNotUsed, ...]:
        """Facts of the file that no check or computation reads."""
    @property
    def stock(self) -> planned.StockPlan:
        """What is taken from the shelf, against what is in hand."""
    @property
    def strengths(self) -> tuple[planned.ChosenStrength, ...]:
        """The strengths that the plan chose, where sections left theirs out."""
    @property
    def title(self) -> str:
        """What the service is called."""
    @property
    def together(self) -> tuple[planned.TogetherPlan, ...]:
        """What makes those sections finish together, or why they do not."""
    def text(self) -> str:
        """The bench sheet as plain text, 80 columns wide."""
    def html(self) -> str:
        """The bench sheet as a page: one file without network, for a phone at the chair and for paper."""
    def guest_html(self) -> str:
        """The page for the guest: what is planned, risks, price, care, agreement."""
    def head_map(self) -> str | None:
        """The map of the head as SVG; none where no section says where it lies."""
    def head_map_text(self) -> str | None:
        """The same map for a terminal: a box for each region with its sections and foils, and under it all of them in words.

        Returns:
            The text, or ``None`` where no section says where it lies.

        Examples:
            >>> from foilwork import plan_file
            >>> "; nape, foils 4-12" in plan_file("examples/soft-gradient.toml").head_map_text()
            True
        """
    def consult(self) -> planned.ConsultationPlan:
        """From consultation to decision: whether to go on and who has to agree, what each result of a test changes, the visits on
        the calendar, what else was considered, and what is agreed with the guest.

        Returns:
            A :class:`foilwork.planned.ConsultationPlan`.

        Raises:
            ServiceFileError: never for a plan that was made.

        Examples:
            >>> from foilwork import plan_file
            >>> found = plan_file("examples/staged-lightening.toml").consult()
            >>> found.decision.go, [(consent.who, str(consent.agreed_on)) for consent in found.decision.consents]
            ('restrict', [('guest', 'None'), ('doctor', '2026-11-27')])
        """
    def consultation_text(self) -> str:
        """The consultation as plain text, 80 columns wide."""
    def agreement_html(self) -> str:
        """What is agreed, as a page for the guest to read and to sign: one file without network."""
    def trail(self) -> list[TracedResult]:
        """How each main result came about: strengths on the hair, levels, time in the chair, cost and price.

        Returns:
            The results, each with its inputs, its formula, its basis and its sources.

        Examples:
            >>> from foilwork import plan_file
            >>> first = plan_file("examples/soft-gradient.toml").trail()[0]
            >>> first.what, first.formula
            ('nape: strength on the hair, bowl 1', 'sum of grams times % w/w, over the sum of grams, as weighed')
        """
    def json(self) -> str:
        """The plan as JSON text."""
    def to_dict(self) -> dict[str, object]:
        """The plan as dicts, lists, strings and numbers; every key carries its unit, every estimate its bounds."""
    def cards(self) -> list[planned.BowlCard]:
        """The mixing cards, one for each fresh bowl.

        Returns:
            The cards, in the order of mixing.
        """
    def __eq__(self, other: object, /) -> bool: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __hash__(self) -> int: ...
    def _repr_html_(self) -> str: ...

def plan(
    file: str | Mapping[str, Any],
    format: Literal["toml", "json"] = "toml",
    shop: Shop | None = None,
    strand_book: str | None = None,
    seen: Sequence[str] | None = None,
    records: str | None = None,
) -> Plan:
    """Plan a service from the text of a service file, or from the same as a mapping.

    Args:
        file: the file's text, or a mapping of its shape; there dates may be ``datetime`` objects.
        format: ``"toml"`` or ``"json"`` for a text; both have the same shape.
        shop: what the salon has, where the file only names it in ``shop_file``: a :class:`foilwork.shop.Shop`.
        strand_book: the text of the strand book that the file names in ``strand_book``.
        seen: levels seen in mid-service, each as section, level and minute from the first brush: ``"nape=7.5@40"``.
        records: the text of the kept records that the file names in ``records``, for minutes for each foil.

    Returns:
        The plan. Findings that say stop are part of it; ask ``plan.blocked``.

    Raises:
        ServiceFileError: everything that is wrong with the file, each with its line; ``.problems`` lists it.

    Examples:
        >>> import foilwork
        >>> try:
        ...     foilwork.plan('format = 2')
        ... except foilwork.ServiceFileError as error:
        ...     print([problem for problem in error.problems if problem[1] == "format"])
        [(1, 'format', '2 is out of range: give 1')]
        >>> try:
        ...     foilwork.plan({"format": 2})
        ... except foilwork.ServiceFileError as error:
        ...     print(error.problems[0])
        (None, 'format', '2 is out of range: give 1')
    """

def plan_file(path: str | os.PathLike[str], seen: Sequence[str] | None = None) -> Plan:
    """Plan a service from a file, TOML or JSON (told by what is in it). A shop that the file names in
    ``shop_file``, a strand book in ``strand_book`` and kept records in ``records`` are read too, from the folder of the file.

    Args:
        path: the service file, UTF-8.
        seen: levels seen in mid-service, each as section, level and minute from the first brush: ``"nape=7.5@40"``.

    Returns:
        The plan; ``print(plan)`` shows the bench sheet.

    Raises:
        ServiceFileError: everything that is wrong with the file or its shop, each with its line.
        OSError: a file cannot be read.

    Examples:
        >>> from foilwork import plan_file
        >>> plan_file("examples/soft-gradient.toml").blocked
        False
        >>> plan = plan_file("examples/finish-together.toml", seen=["nape=7@35"])
        >>> plan.lift[0].seen[0].next
        'go-on'
    """
def service_schema() -> dict[str, Any]:
    """The JSON Schema of a service file (draft 2020-12), as plain Python data.

    Returns:
        The schema.

    Examples:
        >>> from foilwork import service_schema
        >>> service_schema()["title"]
        'ServiceFile'
    """
