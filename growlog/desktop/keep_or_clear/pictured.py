"""The form filled in for a picture of it: nothing here is written anywhere."""

from growlog.desktop.keep_or_clear.inputs_form import GUESS, InputsForm


def fill_example(form: InputsForm) -> None:
    """A kg at 9, a third of a coin a day to run, and a guess of the next crop."""
    for field, value in ((form.value_field, 9), (form.running_field, 0.3), (form.net_field, 18), (form.days_field, 95)):
        field.set_value(value)
    form.instead.set_value(GUESS)
    form.labour_box.setChecked(False)
    form.changed.emit()
