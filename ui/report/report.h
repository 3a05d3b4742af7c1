#pragma once

#include "core/base/date.h"
#include "core/chart/chart_spec.h"

#include <QByteArray>
#include <QPicture>
#include <QSize>
#include <QString>
#include <QStringList>

#include <string>
#include <variant>
#include <vector>

namespace plumule::ui {

// What a report says, without a page or a colour: report_pdf and report_html set it.

struct ReportHeading
{
    QString text;
    bool beginsPage = false;
};

enum class WordsLook
{
    Lead, // the answer
    Plain,
    Muted
};
struct ReportWords
{
    QString text; // lines are paragraphs of their own
    WordsLook look = WordsLook::Plain;
};

struct ReportList
{
    QStringList items;
};

// Something that might hurt, or mislead.
struct ReportCaution
{
    QString heading;
    QStringList lines;
};

// A few figures side by side.
struct ReportFigure
{
    QString value;
    QString about;
};
struct ReportFigures
{
    std::vector<ReportFigure> figures;
};

// Columns from `rightFrom` up to before `leftFrom` hold numbers and stand at the right.
struct ReportTable
{
    QString caption;
    QStringList header;
    std::vector<QStringList> rows;
    int rightFrom = 1;
    int leftFrom = 1000;
    bool isDense = false; // many rows of small print

    [[nodiscard]] bool isRight(int column) const
    {
        return column >= rightFrom && column < leftFrom;
    }
};

struct ReportChart
{
    ChartSpec spec;
    QString caption; // empty: the chart's own title
};

// Side by side. A file that can't be read is shown as its caption alone.
struct ReportPicture
{
    QString path;
    QString caption;
};
struct ReportPictures
{
    QString heading;
    std::vector<ReportPicture> pictures;
};

using ReportBlock = std::variant<ReportHeading, ReportWords, ReportList, ReportCaution,
                                 ReportFigures, ReportTable, ReportChart, ReportPictures>;

struct Report
{
    QString title;
    QString subtitle;
    QString foot; // of every page: what it is and when it was made
    std::vector<ReportBlock> blocks;

    // Leaves out what has nothing to show.
    void add(ReportBlock block);
};

// A chart ready for pages and for a browser.
struct DrawnChart
{
    QSize size;
    QPicture picture;
    QByteArray svg;
};
// All charts of a report, in their order. Only on the window's thread; no window is needed.
[[nodiscard]] std::vector<DrawnChart> chartsOf(const Report& report);

} // namespace plumule::ui
