// Part of ui/text/error_words.h: what a sum over numbers or over a table of one's own refuses.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(stats::ProbabilityReason reason, const Error&)
{
    switch (reason) {
    case stats::ProbabilityReason::Correlation:
        return Errors::tr("These comparisons can't hang together as they are said to: check what "
                          "each is compared with.");
    case stats::ProbabilityReason::OutOfRange:
        return Errors::tr("No probability can be told of these numbers: check how many there are "
                          "of each.");
    case stats::ProbabilityReason::NoRoot:
        return Errors::tr("The search for this number found none in reach: change what is asked "
                          "for.");
    }
    return {};
}

QString words(stats::GroupsReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case stats::GroupsReason::TooFewValues:
        return Errors::tr("There are too few values to tell their spread: measure more of them.");
    case stats::GroupsReason::TooManyValues:
        return Errors::tr("More than %1 values are too many for this check: take some out.")
            .arg(value[0]);
    case stats::GroupsReason::NotFinite:
        return Errors::tr("A value is no finite number: correct it.");
    case stats::GroupsReason::TooFewGroups:
        return Errors::tr("One group alone can't be compared: add another one.");
    case stats::GroupsReason::EmptyGroup:
        return Errors::tr("Group %1 has no value: fill it in, or leave the group out.")
            .arg(value[0]);
    case stats::GroupsReason::NoSpread:
        return Errors::tr("The values of a group don't differ, so there is no spread to judge by: "
                          "measure more of them, or on a finer scale.");
    case stats::GroupsReason::AllAlike:
        return Errors::tr("All values are alike, so they have no order: measure on a finer scale.");
    case stats::GroupsReason::TooFewBlocks:
        return Errors::tr("One block alone can't be compared: add another one.");
    case stats::GroupsReason::TooFewTreatments:
        return Errors::tr("A block with one value has nothing to rank: add another value to each.");
    case stats::GroupsReason::BlockSize:
        return Errors::tr("Block %1 has not as many values as the first one: fill in what it "
                          "lacks.")
            .arg(value[0]);
    case stats::GroupsReason::NoTasters:
        return Errors::tr("No one has answered: ask one taster or more.");
    case stats::GroupsReason::RightAnswers:
        return Errors::tr("There can't be %1 right answers of %2: correct one of the two.")
            .arg(value[0], value[1]);
    }
    return {};
}

QString words(stats::PowerReason reason, const Error&)
{
    switch (reason) {
    case stats::PowerReason::Spread:
        return Errors::tr("The spread must be a number above 0: enter such a one.");
    case stats::PowerReason::Risk:
        return Errors::tr("The risk must lie between 0 and 1: enter such a one.");
    case stats::PowerReason::Power:
        return Errors::tr("The power must lie between the risk and 1: enter such a one.");
    case stats::PowerReason::OneGroup:
        return Errors::tr("One medium alone can't be compared: enter two or more.");
    case stats::PowerReason::Count:
        return Errors::tr("The count of trays is no finite number: enter such a one.");
    case stats::PowerReason::TooFewEach:
        return Errors::tr("One tray of each tells nothing of the spread: enter two or more.");
    case stats::PowerReason::Difference:
        return Errors::tr("The difference must be a number above 0: enter such a one.");
    case stats::PowerReason::OutOfReach:
        return Errors::tr("No number of trays in reach shows so small a difference: enter a larger "
                          "one, or a lower power.");
    }
    return {};
}

QString words(stats::CurveReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case stats::CurveReason::Lengths:
        return Errors::tr("There are not as many places as readings: fill in what is missing.");
    case stats::CurveReason::NotFinite:
        return Errors::tr("A reading is no finite number: correct it.");
    case stats::CurveReason::TooFewReadings:
        return Errors::tr("There are too few readings for this curve, %1: take %2 or more.")
            .arg(value[0], value[1]);
    case stats::CurveReason::TooFewPlaces:
        return Errors::tr("The readings stand at too few different x for this curve, %1: take them "
                          "at %2 or more.")
            .arg(value[0], value[1]);
    case stats::CurveReason::AllAlike:
        return Errors::tr("All readings are alike, so there is no growth to fit: take some "
                          "earlier, or later.");
    case stats::CurveReason::Undetermined:
        return Errors::tr("These readings can't tell the numbers of a %1 curve apart: take more of "
                          "them, or choose another curve.")
            .arg(value[0]);
    case stats::CurveReason::Stalled:
        return Errors::tr("The search for a %1 curve did not converge: take more readings, or "
                          "choose another curve.")
            .arg(value[0]);
    case stats::CurveReason::NoFullHeight:
        return Errors::tr("The %1 curve that fits best does not rise to a full height: take more "
                          "readings, or choose another curve.")
            .arg(value[0]);
    case stats::CurveReason::HeightNotReached:
        return Errors::tr("The curve never comes to this height: enter a lower one.");
    case stats::CurveReason::Fraction:
        return Errors::tr("A part of the way lies between 0 and 1: enter such a one.");
    case stats::CurveReason::Level:
        return Errors::tr("The level of an interval lies between 0 and 1: enter such a one.");
    case stats::CurveReason::AskedNotFinite:
        return Errors::tr("What is asked of the curve is no finite number: enter such a one.");
    }
    return {};
}

QString words(stats::ModelReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case stats::ModelReason::ColumnNameMissing:
        return Errors::tr("A column has no name: give it one.");
    case stats::ModelReason::ColumnTwice:
        return Errors::tr("Two columns are called “%1”: rename one of them.").arg(value[0]);
    case stats::ModelReason::ColumnLength:
        return Errors::tr("The column “%1” has not as many rows as the others: fill in what is "
                          "missing.")
            .arg(value[0]);
    case stats::ModelReason::ColumnUnknown:
        return Errors::tr("There is no column “%1” of the kind that is needed: check its name.")
            .arg(value[0]);
    case stats::ModelReason::RowLength:
        return Errors::tr("A row has %1 cells under %2 columns: correct it.")
            .arg(value[0], value[1]);
    case stats::ModelReason::NotFinite:
        return Errors::tr("A number of “%1” is not finite: correct it.").arg(value[0]);
    case stats::ModelReason::NotANumber:
        return Errors::tr("“%1” wants a number, not “%2”: correct it.").arg(value[0], value[1]);
    case stats::ModelReason::TooFewRows:
        return Errors::tr("Too few rows have a value in every column asked for: add more of them.");
    case stats::ModelReason::OneLevel:
        return Errors::tr("“%1” has one level only, so there is nothing to compare: add rows of "
                          "another one, or leave it out.")
            .arg(value[0]);
    case stats::ModelReason::NoRowsToRest:
        return Errors::tr("There are too few rows to judge the spread by: add more of them, or "
                          "leave a column out.");
    case stats::ModelReason::NoSpread:
        return Errors::tr("The rows have no spread left to test against: check what was measured, "
                          "or add more of them.");
    case stats::ModelReason::Inseparable:
        return Errors::tr("“%1” can't be told apart from the other columns or from the rest: leave "
                          "it out, or add rows that differ in it.")
            .arg(value[0]);
    case stats::ModelReason::NotConverged:
        return Errors::tr("No likeliest variances were found: add more rows, or leave the random "
                          "column out.");
    case stats::ModelReason::TermEmpty:
        return Errors::tr("A term of the model names no column: give it one.");
    case stats::ModelReason::TermTwice:
        return Errors::tr("“%1” stands in the model twice: take one out.").arg(value[0]);
    case stats::ModelReason::TermPartMissing:
        return Errors::tr("“%1” needs “%2” in the model too: add it.").arg(value[0], value[1]);
    case stats::ModelReason::TermUnknown:
        return Errors::tr("“%1” is no part of the model: check its name.").arg(value[0]);
    case stats::ModelReason::NotCategories:
        return Errors::tr("“%1” can't be random, since it holds no categories: choose another "
                          "column.")
            .arg(value[0]);
    case stats::ModelReason::RandomMissing:
        return Errors::tr("The model has no random column: choose one.");
    case stats::ModelReason::FixedAndRandom:
        return Errors::tr("“%1” can't be compared and be random at once: choose one of the two.")
            .arg(value[0]);
    case stats::ModelReason::LevelUnknown:
        return Errors::tr("“%1” is no level of “%2”: check its name.").arg(value[0], value[1]);
    case stats::ModelReason::ContrastSum:
        return Errors::tr("The weights of a contrast must sum to 0, and not all be 0: correct "
                          "them.");
    case stats::ModelReason::ConfidenceLevel:
        return Errors::tr("The level of an interval lies between 0 and 1: enter such a one.");
    case stats::ModelReason::Margin:
        return Errors::tr("The margin must be a number above 0: enter such a one.");
    }
    return {};
}

} // namespace plumule::ui
