// Part of ui/text/error_words.h: forms, paper and labels.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(FormReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case FormReason::AmountForm:
        return Errors::tr("“%1” is no amount: type it in figures, such as 12.5, or leave it empty.")
            .arg(value[0]);
    case FormReason::LengthForm:
        return Errors::tr("“%1” is no length of a stage: type it in figures, such as 2.5.")
            .arg(value[0]);
    case FormReason::VarietyMissing:
        return Errors::tr("No variety is chosen: choose one.");
    case FormReason::MediumMissing:
        return Errors::tr("No medium is chosen: choose one.");
    }
    return {};
}

QString words(PaperReason reason, const Error&)
{
    switch (reason) {
    case PaperReason::PrinterRefused:
        return Errors::tr(
            "The printer takes nothing: check that it is on and has paper, or choose another one.");
    }
    return {};
}

QString words(LabelReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case LabelReason::Rows:
        return Errors::tr("A sheet has one row of labels or more: enter how many.");
    case LabelReason::Columns:
        return Errors::tr("A sheet has one column of labels or more: enter how many.");
    case LabelReason::Margin:
        return Errors::tr(
            "A margin is not below 0: measure from the edge of the sheet to the first label.");
    case LabelReason::Gap:
        return Errors::tr(
            "A gap between labels is not below 0: measure from one label to the next.");
    case LabelReason::Size:
        return Errors::tr("These labels would be %1, but each needs 24 × 15 mm and all have to be "
                          "within the page: correct the margins, the gaps or the number of labels.")
            .arg(value[0]);
    case LabelReason::Skip:
        return Errors::tr("More labels are marked as used than a sheet holds: choose fewer.");
    }
    return {};
}

} // namespace plumule::ui
