#include "ui/report/report_html.h"

#include "core/base/whole_file.h"
#include "core/base/work_reason.h"
#include "ui/medium/marker.h"
#include "ui/widget/theme.h"

#include <QBuffer>
#include <QImageReader>
#include <QRegularExpression>
#include <QXmlStreamWriter>

namespace plumule::ui {
namespace {

constexpr int kPictureWide = 900;
constexpr int kJpegQuality = 82;

// The page's own look; the colours stand before it as variables.
constexpr const char* kHtmlStyle = R"(
* { box-sizing: border-box; }
body { margin: 0; background: var(--page); color: var(--ink);
  font: 16px/1.5 Inter, system-ui, "Segoe UI", Helvetica, Arial, sans-serif; }
main { max-width: 860px; margin: 0 auto; padding: 40px 24px 64px; }
h1 { font-size: 30px; line-height: 1.2; margin: 0 0 6px; }
h2 { font-size: 20px; margin: 40px 0 8px; }
h3 { font-size: 16px; margin: 24px 0 6px; }
p, ul { margin: 0 0 10px; } ul { padding-left: 22px; }
.muted, figcaption, footer { color: var(--muted); }
.lead { font-size: 21px; line-height: 1.35; font-weight: 600; margin: 16px 0;
  padding-left: 16px; border-left: 5px solid var(--accent); }
.caution { background: var(--caution); border-left: 5px solid var(--cautionEdge);
  border-radius: 8px; padding: 12px 16px; margin: 16px 0; }
.caution p:last-child { margin-bottom: 0; }
.figures, .pictures { display: flex; flex-wrap: wrap; gap: 12px; margin: 16px 0; }
.figures div { flex: 1 1 160px; background: var(--card); border: 1px solid var(--edge);
  border-radius: 10px; padding: 12px 16px; }
.figures b { display: block; font-size: 22px; }
.pictures figure { flex: 1 1 220px; max-width: 380px; margin: 0; }
.pictures img { display: block; width: 100%; border-radius: 8px; }
figure.chart { margin: 20px 0; background: var(--card); border: 1px solid var(--edge);
  border-radius: 10px; padding: 12px 16px; }
figure.chart svg { display: block; width: 100%; height: auto; }
figure.chart figcaption { color: var(--ink); font-weight: 600; margin-bottom: 8px; }
.table { overflow-x: auto; margin: 16px 0; }
table { border-collapse: collapse; width: 100%; font-size: 14px; }
caption { text-align: left; font-weight: 600; padding-bottom: 6px; }
th, td { text-align: left; vertical-align: top; padding: 7px 14px 7px 0;
  border-bottom: 1px solid var(--edge); }
thead th { font-weight: 400; color: var(--muted); vertical-align: bottom; }
tbody th { font-weight: 600; }
.n { text-align: right; font-variant-numeric: tabular-nums; }
th:last-child, td:last-child { padding-right: 0; }
footer { margin-top: 48px; font-size: 14px; }
@media print { body { background: #fff; } figure, tr, .caution { break-inside: avoid; }
  h2, h3 { break-after: avoid; } }
)";

QString variables(const Palette& colours)
{
    const std::vector<std::pair<const char*, QColor>> named = {
        {"page", colours.page},           {"card", colours.card},
        {"edge", colours.cardEdge},       {"ink", colours.ink},
        {"muted", colours.mutedInk},      {"accent", colours.accent},
        {"caution", colours.cautionCard}, {"cautionEdge", colours.cautionEdge}};
    QStringList lines;
    for (const auto& [name, colour] : named) {
        lines << QStringLiteral("--%1: %2").arg(QLatin1String(name), colour.name());
    }
    return lines.join("; ");
}

// Charts are drawn in the colours of paper; where the page is dark each of these becomes its dark
// sister.
QString darkChartRules()
{
    const Palette& paper = paperPalette();
    const Palette& dark = darkPalette();
    std::vector<std::pair<QString, QString>> sisters = {
        {paper.card.name(), dark.card.name()},     {paper.cardEdge.name(), dark.cardEdge.name()},
        {paper.ink.name(), dark.ink.name()},       {paper.mutedInk.name(), dark.mutedInk.name()},
        {paper.accent.name(), dark.accent.name()}, {QStringLiteral("#000000"), dark.ink.name()}};
    for (int marker = 0; marker < kMarkerColours; ++marker) {
        sisters.emplace_back(markerColourOn(Ground::Light, marker).name(),
                             markerColourOn(Ground::Dark, marker).name());
    }
    QString rules;
    for (const auto& [light, darker] : sisters) {
        rules += QStringLiteral("svg [fill=\"%1\"] { fill: %2; } svg [stroke=\"%1\"] { stroke: "
                                "%2; }\n")
                     .arg(light, darker);
    }
    return rules;
}

QString styleText()
{
    return QStringLiteral(":root { color-scheme: light dark; %1 }\n")
               .arg(variables(lightPalette())) +
           QLatin1String(kHtmlStyle) +
           QStringLiteral("@media screen and (prefers-color-scheme: dark) { :root { %1 }\n%2}\n")
               .arg(variables(darkPalette()), darkChartRules());
}

// Without its prolog and its size in mm, so that it stands within the page and as wide as it.
QString inlineSvg(const QByteArray& svg)
{
    QString text = QString::fromUtf8(svg);
    text.remove(0, qMax<qsizetype>(0, text.indexOf(QStringLiteral("<svg"))));
    const qsizetype end = text.indexOf('>');
    QString head = text.left(end);
    static const QRegularExpression kSize(
        QStringLiteral("\\s(width|height|version|baseProfile)=\"[^\"]*\""));
    head.remove(kSize);
    text = head + QStringLiteral(" role=\"img\"") + text.mid(end);
    text.replace(QStringLiteral("font-family=\"Inter\""),
                 QStringLiteral("font-family=\"Inter, system-ui, sans-serif\""));
    return text;
}

QString pictureData(const QString& path)
{
    QImageReader reader(path);
    reader.setAutoTransform(true);
    QImage image = reader.read();
    if (image.isNull()) {
        return {};
    }
    if (image.width() > kPictureWide) {
        image = image.scaledToWidth(kPictureWide, Qt::SmoothTransformation);
    }
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.convertToFormat(QImage::Format_RGB32).save(&buffer, "JPEG", kJpegQuality);
    return QStringLiteral("data:image/jpeg;base64,") + QString::fromLatin1(bytes.toBase64());
}

class HtmlMaker
{
public:
    HtmlMaker(QXmlStreamWriter& out, QIODevice& raw, const std::vector<DrawnChart>& charts)
        : m_out(out)
        , m_raw(raw)
        , m_charts(charts)
    {}

    void operator()(const ReportHeading& heading) { element("h2", heading.text); }
    void operator()(const ReportWords& words)
    {
        const char* look = words.look == WordsLook::Lead    ? "lead"
                           : words.look == WordsLook::Muted ? "muted"
                                                            : "";
        for (const QString& line : words.text.split('\n', Qt::SkipEmptyParts)) {
            element("p", line, look);
        }
    }
    void operator()(const ReportList& list)
    {
        begin("ul");
        for (const QString& item : list.items) {
            element("li", item);
        }
        m_out.writeEndElement();
    }
    void operator()(const ReportCaution& caution)
    {
        begin("div", "caution");
        if (!caution.heading.isEmpty()) {
            begin("p");
            element("b", caution.heading);
            m_out.writeEndElement();
        }
        for (const QString& line : caution.lines) {
            element("p", line);
        }
        m_out.writeEndElement();
    }
    void operator()(const ReportFigures& figures)
    {
        begin("div", "figures");
        for (const ReportFigure& figure : figures.figures) {
            begin("div");
            element("b", figure.value);
            element("span", figure.about, "muted");
            m_out.writeEndElement();
        }
        m_out.writeEndElement();
    }
    void operator()(const ReportTable& table)
    {
        begin("div", "table");
        begin("table");
        if (!table.caption.isEmpty()) {
            element("caption", table.caption);
        }
        begin("thead");
        begin("tr");
        for (int i = 0; i < table.header.size(); ++i) {
            element("th", table.header[i], table.isRight(i) ? "n" : "");
        }
        m_out.writeEndElement();
        m_out.writeEndElement();
        begin("tbody");
        for (const QStringList& row : table.rows) {
            begin("tr");
            for (int i = 0; i < row.size(); ++i) {
                element(i == 0 ? "th" : "td", row[i], table.isRight(i) ? "n" : "");
            }
            m_out.writeEndElement();
        }
        m_out.writeEndElement();
        m_out.writeEndElement();
        m_out.writeEndElement();
    }
    void operator()(const ReportChart& chart)
    {
        begin("figure", "chart");
        if (!chart.caption.isEmpty()) {
            element("figcaption", chart.caption);
        }
        if (m_chart < m_charts.size()) {
            // Ends the open tag; the drawing is markup of its own.
            m_out.writeCharacters(QString());
            m_raw.write(inlineSvg(m_charts[m_chart].svg).toUtf8());
        }
        ++m_chart;
        m_out.writeEndElement();
    }
    void operator()(const ReportPictures& pictures)
    {
        if (!pictures.heading.isEmpty()) {
            element("h3", pictures.heading);
        }
        begin("div", "pictures");
        for (const ReportPicture& picture : pictures.pictures) {
            begin("figure");
            const QString image = picture.path.isEmpty() ? QString() : pictureData(picture.path);
            if (!image.isEmpty()) {
                m_out.writeEmptyElement("img");
                m_out.writeAttribute("src", image);
                m_out.writeAttribute("alt", picture.caption);
            }
            element("figcaption", picture.caption);
            m_out.writeEndElement();
        }
        m_out.writeEndElement();
    }

private:
    void begin(const char* name, const char* look = "")
    {
        m_out.writeStartElement(QLatin1String(name));
        if (*look != '\0') {
            m_out.writeAttribute("class", QLatin1String(look));
        }
    }
    void element(const char* name, const QString& text, const char* look = "")
    {
        begin(name, look);
        m_out.writeCharacters(text);
        m_out.writeEndElement();
    }

    QXmlStreamWriter& m_out;
    QIODevice& m_raw;
    const std::vector<DrawnChart>& m_charts;
    std::size_t m_chart = 0;
};

void writeHead(QXmlStreamWriter& out, const Report& report)
{
    out.writeStartElement("head");
    out.writeEmptyElement("meta");
    out.writeAttribute("charset", "utf-8");
    out.writeEmptyElement("meta");
    out.writeAttribute("name", "viewport");
    out.writeAttribute("content", "width=device-width, initial-scale=1");
    // The report needs nothing from outside and runs nothing, whatever was written into the
    // journal.
    out.writeEmptyElement("meta");
    out.writeAttribute("http-equiv", "Content-Security-Policy");
    out.writeAttribute("content", "default-src 'none'; style-src 'unsafe-inline'; img-src data:");
    out.writeTextElement("title", report.title);
    // In a style sheet ">" and quotes stand as they are, and it has no "<" nor "&".
    out.writeStartElement("style");
    out.writeCharacters(QString());
    out.device()->write(styleText().toUtf8());
    out.writeEndElement();
    out.writeEndElement();
}

} // namespace

QByteArray reportHtml(const Report& report, const std::vector<DrawnChart>& charts,
                      const Progress& progress)
{
    QByteArray text;
    QBuffer buffer(&text);
    buffer.open(QIODevice::WriteOnly);
    QXmlStreamWriter out(&buffer);
    buffer.write("<!DOCTYPE html>\n");
    out.writeStartElement("html");
    out.writeAttribute("lang", "en");
    writeHead(out, report);
    out.writeStartElement("body");
    out.writeStartElement("main");
    out.writeTextElement("h1", report.title);
    out.writeStartElement("p");
    out.writeAttribute("class", "muted");
    out.writeCharacters(report.subtitle);
    out.writeEndElement();
    HtmlMaker maker(out, buffer, charts);
    for (std::size_t i = 0; i < report.blocks.size() && !progress.isStopped(); ++i) {
        std::visit([&maker](const auto& each) { maker(each); }, report.blocks[i]);
        progress.report(double(i + 1) / double(report.blocks.size()));
    }
    out.writeTextElement("footer", report.foot);
    out.writeEndElement();
    out.writeEndElement();
    out.writeEndElement();
    return text;
}

Done writeReportHtml(const QString& path, const Report& report,
                     const std::vector<DrawnChart>& charts, const Progress& progress)
{
    const QByteArray text = reportHtml(report, charts, progress);
    if (progress.isStopped()) {
        return fail(ErrorKind::Cancelled, WorkReason::Stopped);
    }
    return writeWhole(path.toStdString(),
                      {text.constData(), static_cast<std::size_t>(text.size())});
}

} // namespace plumule::ui
