#include "ui/text/error_words.h"

#include "core/base/date.h"
#include "core/variety/variety.h"
#include "ui/text/text.h"

namespace plumule::ui {

QString ErrorValues::operator[](std::size_t index) const
{
    return index < m_values.size() ? QString::fromStdString(m_values[index]) : QString();
}

int ErrorValues::number(std::size_t index) const
{
    return (*this)[index].toInt();
}

QString ErrorValues::day(std::size_t index) const
{
    const QString text = (*this)[index];
    const auto day = dateFromIso(text.toStdString());
    return day ? longDateText(*day) : text;
}

QString ErrorValues::moment(std::size_t index) const
{
    const QString text = (*this)[index];
    const auto day = dateFromIso(text.left(10).toStdString());
    return day ? longDateText(*day) + text.mid(10) : text;
}

QString ErrorValues::stage(std::size_t index) const
{
    Stage stage{};
    const QString key = (*this)[index];
    return fromText(key.toStdString(), stage) ? nameOf(stage) : key;
}

QString words(FileReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case FileReason::NotWritten:
        return Errors::tr("The file %1 can't be written: check its folder and the room on the "
                          "disk, or choose another place.")
            .arg(value[0]);
    case FileReason::NotRead:
        return Errors::tr("The file %1 can't be read: check that it is there and who may read it.")
            .arg(value[0]);
    case FileReason::Kept:
        return Errors::tr("The file %1 is a journal that is open, so it was left as it is: choose "
                          "another name.")
            .arg(value[0]);
    }
    return {};
}

QString words(TextReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case TextReason::NotANumber:
        return Errors::tr("“%1” is no number: type it in figures, such as 12.5.").arg(value[0]);
    case TextReason::NotAWholeNumber:
        return Errors::tr("“%1” is no whole number: type it in figures, such as 12.").arg(value[0]);
    case TextReason::ThousandsOrDecimals:
        return Errors::tr(
                   "“%1” can be read in two ways: type thousands without a mark, and decimals "
                   "with a point.")
            .arg(value[0]);
    case TextReason::NotADate:
        return Errors::tr("“%1” is no date: type year, month and day, such as 2026-03-12.")
            .arg(value[0]);
    case TextReason::NotATime:
        return Errors::tr("“%1” is no time: type it as 06:50.").arg(value[0]);
    }
    return {};
}

QString words(WorkReason reason, const Error&)
{
    switch (reason) {
    case WorkReason::Stopped:
        return Errors::tr(
            "Stopped as you asked, and nothing was changed: start again when you like.");
    }
    return {};
}

} // namespace plumule::ui
