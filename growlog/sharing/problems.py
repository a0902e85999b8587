"""What can be wrong with a file that comes back from others: one plain sentence that names the place."""

from growlog.words import say


class PackageProblem(Exception):
    """A data package that cannot be read or written; str() is the sentence for the user.

    row: as a spreadsheet counts, the header being row 1; None where the whole file is meant.
    """

    def __init__(self, sentence: str, file: str, row: int | None = None, column: str = "") -> None:
        super().__init__(sentence, file, row, column)
        self.sentence = sentence
        self.file = file
        self.row = row
        self.column = column

    def __str__(self) -> str:
        if self.row is None:
            return say("{file}: {sentence}", file=self.file, sentence=self.sentence)
        if not self.column:
            return say("{file}, row {row}: {sentence}", file=self.file, row=self.row, sentence=self.sentence)
        return say(
            "{file}, row {row}, column {column}: {sentence}",
            file=self.file,
            row=self.row,
            column=self.column,
            sentence=self.sentence,
        )
