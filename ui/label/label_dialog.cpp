#include "ui/label/label_dialog.h"

#include "core/base/quantity.h"
#include "core/journal/room/room_entries.h"
#include "ui/label/label_layout.h"
#include "ui/label/label_preview.h"
#include "ui/paper/paper.h"
#include "ui/paper/printing.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QPainter>
#include <QSpinBox>
#include <QVBoxLayout>

#include <array>

namespace plumule::ui {
namespace {

// Usual sizes of labels on a roll, mm (common practice, no source).
constexpr std::array<std::pair<int, int>, 5> kRolls{
    {{62, 29}, {57, 32}, {50, 30}, {40, 30}, {100, 50}}};

constexpr int kBesideWidth = 640;

enum StockChoice
{
    ChooseA4,
    ChooseLetter,
    ChooseFirstRoll,
    ChooseOwnRoll = ChooseFirstRoll + static_cast<int>(kRolls.size())
};

QHBoxLayout* pairOf(QWidget* first, QWidget* second)
{
    auto* row = new QHBoxLayout;
    row->setSpacing(scaled(8));
    row->addWidget(first, 1);
    row->addWidget(second, 1);
    return row;
}

} // namespace

LabelDialog::LabelDialog(Journal& journal, Services services, const std::vector<TrayId>& trays,
                         QWidget* parent)
    : FormDialog(services.ask, "labelDialog", tr("Labels"), parent)
    , m_services(services)
{
    wish({scaled(820), scaled(600)});
    leaveFreely();
    if (const auto layout = journal.room().layout()) {
        m_isMetric = layout->room.units == UnitSystem::Metric;
    }
    if (auto labels = labelsFor(journal, trays)) {
        m_labels = std::move(*labels);
    } else {
        m_services.messages.refuse(sentence(labels.error()));
    }
    m_summary = label(QString(), "muted");
    m_summary->setObjectName("labelSummary");
    m_summary->setWordWrap(true);
    body()->addWidget(m_summary);
    m_beside = new QBoxLayout(QBoxLayout::LeftToRight);
    m_beside->setSpacing(scaled(24));
    m_beside->addWidget(buildFields(), 0, Qt::AlignTop);
    m_preview = new LabelPreview;
    m_preview->setMinimumHeight(scaled(260));
    m_beside->addWidget(m_preview, 1);
    body()->addLayout(m_beside, 1);
    buildButtons();
    fill(rememberedPaper());
    wireSignals();
    showPaper();
}

void LabelDialog::resizeEvent(QResizeEvent* event)
{
    FormDialog::resizeEvent(event);
    const bool wasBeside = m_beside->direction() == QBoxLayout::LeftToRight;
    m_beside->setDirection(standsBeside(width(), scaled(kBesideWidth), wasBeside)
                               ? QBoxLayout::LeftToRight
                               : QBoxLayout::TopToBottom);
}

QDoubleSpinBox* LabelDialog::lengthField(const char* name, const QString& accessibleName)
{
    auto* field = new QDoubleSpinBox;
    field->setObjectName(name);
    field->setAccessibleName(accessibleName);
    field->setDecimals(m_isMetric ? 1 : 3);
    field->setSingleStep(m_isMetric ? 0.5 : 0.05);
    field->setRange(0, m_isMetric ? 300 : 12);
    field->setSuffix(m_isMetric ? tr(" mm") : tr(" in"));
    connect(field, &QDoubleSpinBox::valueChanged, this, &LabelDialog::showPaper);
    return field;
}

QSpinBox* LabelDialog::countField(const char* name, const QString& accessibleName, int from, int to)
{
    auto* field = new QSpinBox;
    field->setObjectName(name);
    field->setAccessibleName(accessibleName);
    field->setRange(from, to);
    connect(field, &QSpinBox::valueChanged, this, &LabelDialog::showPaper);
    return field;
}

QWidget* LabelDialog::buildFields()
{
    auto* fields = new QWidget;
    auto* column = new QVBoxLayout(fields);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(10));
    m_stock = new QComboBox;
    m_stock->setObjectName("labelStock");
    m_stock->setAccessibleName(tr("Paper"));
    m_stock->addItem(tr("Sheets, A4"));
    m_stock->addItem(tr("Sheets, Letter"));
    for (const auto& [wide, high] : kRolls) {
        m_stock->addItem(tr("Roll, %1").arg(sizeText(QSizeF(wide, high), 0)));
    }
    m_stock->addItem(tr("Roll, own size"));
    column->addWidget(m_stock);
    m_sheetFields = buildSheetFields();
    m_rollFields = buildRollFields();
    column->addWidget(m_sheetFields);
    column->addWidget(m_rollFields);
    return fields;
}

QWidget* LabelDialog::buildSheetFields()
{
    auto* fields = new QWidget;
    auto* form = fieldForm();
    fields->setLayout(form);
    form->setContentsMargins(0, 0, 0, 0);
    m_rows = countField("labelRows", tr("Rows"), 1, 19);
    m_columns = countField("labelColumns", tr("Columns"), 1, 8);
    m_left = lengthField("labelLeft", tr("Left margin"));
    m_right = lengthField("labelRight", tr("Right margin"));
    m_top = lengthField("labelTop", tr("Top margin"));
    m_bottom = lengthField("labelBottom", tr("Bottom margin"));
    m_across = lengthField("labelAcross", tr("Gap across"));
    m_down = lengthField("labelDown", tr("Gap down"));
    m_skip = countField("labelSkip", tr("Labels used already"), 0, 151);
    form->addRow(tr("Rows, columns"), pairOf(m_rows, m_columns));
    form->addRow(tr("Left, right edge"), pairOf(m_left, m_right));
    form->addRow(tr("Top, bottom edge"), pairOf(m_top, m_bottom));
    form->addRow(tr("Gap across, down"), pairOf(m_across, m_down));
    form->addRow(tr("Used already"), m_skip);
    return fields;
}

QWidget* LabelDialog::buildRollFields()
{
    auto* fields = new QWidget;
    auto* form = fieldForm();
    fields->setLayout(form);
    form->setContentsMargins(0, 0, 0, 0);
    m_wide = lengthField("labelWide", tr("Width of a label"));
    m_high = lengthField("labelHigh", tr("Height of a label"));
    form->addRow(tr("Width, height"), pairOf(m_wide, m_high));
    return fields;
}

void LabelDialog::buildButtons()
{
    connect(addButton(tr("Close"), "labelClose"), &QPushButton::clicked, this, &QDialog::reject);
    m_print = addButton(tr("Print…"), "labelPrint");
    m_save = addButton(tr("Save PDF…"), "labelSave", "primary");
}

void LabelDialog::wireSignals()
{
    connect(m_stock, &QComboBox::currentIndexChanged, this, &LabelDialog::showPaper);
    connect(m_save, &QPushButton::clicked, this, &LabelDialog::savePdf);
    connect(m_print, &QPushButton::clicked, this, &LabelDialog::print);
}

// Until a paper was printed on, the sheet that is usual where the room's units are.
LabelPaper LabelDialog::rememberedPaper() const
{
    const QString line = m_services.preferences.get(Preference::LabelPaper).toString();
    LabelPaper paper = labelPaperFrom(line);
    if (line.isEmpty() && !m_isMetric) {
        paper.stock = LabelStock::Letter;
    }
    return paper;
}

// A length that is not touched stays what it is, to the last figure.
void LabelDialog::showLength(QDoubleSpinBox& field, double mm)
{
    field.setValue(m_isMetric ? mm : mm / kMillimetresPerInch);
    m_given[&field] = {mm, field.value()};
}

double LabelDialog::lengthIn(const QDoubleSpinBox& field) const
{
    const auto given = m_given.find(&field);
    if (given != m_given.end() && qFuzzyCompare(1 + given->second.second, 1 + field.value())) {
        return given->second.first;
    }
    return m_isMetric ? field.value() : field.value() * kMillimetresPerInch;
}

QString LabelDialog::sizeText(QSizeF mm, int decimals) const
{
    if (!m_isMetric) {
        return tr("%1 × %2 in")
            .arg(numberText(mm.width() / kMillimetresPerInch, 2),
                 numberText(mm.height() / kMillimetresPerInch, 2));
    }
    return tr("%1 × %2 mm")
        .arg(numberText(mm.width(), decimals), numberText(mm.height(), decimals));
}

void LabelDialog::fill(const LabelPaper& paper)
{
    int choice = paper.stock == LabelStock::A4       ? ChooseA4
                 : paper.stock == LabelStock::Letter ? ChooseLetter
                                                     : ChooseOwnRoll;
    for (std::size_t i = 0; paper.stock == LabelStock::Roll && i < kRolls.size(); ++i) {
        if (qFuzzyCompare(paper.labelWide, kRolls[i].first) &&
            qFuzzyCompare(paper.labelHigh, kRolls[i].second)) {
            choice = ChooseFirstRoll + static_cast<int>(i);
        }
    }
    m_stock->setCurrentIndex(choice);
    m_rows->setValue(paper.rows);
    m_columns->setValue(paper.columns);
    showLength(*m_left, paper.marginLeft);
    showLength(*m_right, paper.marginRight);
    showLength(*m_top, paper.marginTop);
    showLength(*m_bottom, paper.marginBottom);
    showLength(*m_across, paper.gapAcross);
    showLength(*m_down, paper.gapDown);
    showLength(*m_wide, paper.labelWide);
    showLength(*m_high, paper.labelHigh);
}

LabelPaper LabelDialog::paper() const
{
    LabelPaper paper;
    const int choice = m_stock->currentIndex();
    paper.stock = choice == ChooseA4       ? LabelStock::A4
                  : choice == ChooseLetter ? LabelStock::Letter
                                           : LabelStock::Roll;
    paper.rows = m_rows->value();
    paper.columns = m_columns->value();
    paper.marginLeft = lengthIn(*m_left);
    paper.marginRight = lengthIn(*m_right);
    paper.marginTop = lengthIn(*m_top);
    paper.marginBottom = lengthIn(*m_bottom);
    paper.gapAcross = lengthIn(*m_across);
    paper.gapDown = lengthIn(*m_down);
    paper.skip = paper.stock == LabelStock::Roll ? 0 : m_skip->value();
    paper.labelWide = lengthIn(*m_wide);
    paper.labelHigh = lengthIn(*m_high);
    if (choice >= ChooseFirstRoll && choice < ChooseOwnRoll) {
        const auto& [wide, high] = kRolls[static_cast<std::size_t>(choice - ChooseFirstRoll)];
        paper.labelWide = wide;
        paper.labelHigh = high;
    }
    return paper;
}

QString LabelDialog::summary(QSizeF size) const
{
    const LabelPaper chosen = paper();
    const int count = static_cast<int>(m_labels.size());
    QString text = tr("%n label(s)", nullptr, count) + ", " + sizeText(size, 1);
    if (chosen.stock != LabelStock::Roll) {
        text += ", " + tr("%n sheet(s)", nullptr, labelPages(chosen, count));
    }
    text += '.';
    // Fonts are measured for paper, whatever this window's resolution.
    QImage paperLike(1, 1, QImage::Format_ARGB32);
    QPainter painter(&paperLike);
    const PaperPen pen(painter, 600 / 72.0);
    for (const LabelTray& tray : m_labels) {
        if (layOutLabel(pen, size, tray.code).module <= 0) {
            text += ' ' + tr("%1 is too long for a QR code on this size.").arg(tray.code);
            break;
        }
    }
    return text;
}

void LabelDialog::showPaper()
{
    if (m_preview == nullptr || m_save == nullptr) {
        return;
    }
    const LabelPaper chosen = paper();
    const bool isRoll = chosen.stock == LabelStock::Roll;
    m_sheetFields->setVisible(!isRoll);
    m_rollFields->setVisible(m_stock->currentIndex() == ChooseOwnRoll);
    const auto size = labelSizeOf(chosen);
    setRole(m_summary, size ? "muted" : "warning");
    m_summary->setText(size ? summary(*size) : sentence(size.error()));
    m_save->setEnabled(size && !m_labels.empty());
    m_print->setEnabled(size && !m_labels.empty());
    m_preview->show(m_labels, chosen);
}

void LabelDialog::remember()
{
    m_services.preferences.set(Preference::LabelPaper, toLine(paper()));
}

void LabelDialog::savePdf()
{
    m_services.ask.fileToSave(this, tr("Save the labels"), tr("labels.pdf"), tr("PDF (*.pdf)"),
                              [this](const QString& path) {
                                  const auto written = writeLabels(path, m_labels, paper());
                                  if (!written) {
                                      m_services.messages.refuse(sentence(written.error()));
                                      return;
                                  }
                                  remember();
                                  m_services.messages.tell(
                                      tr("The labels were saved as %1.").arg(path));
                                  accept();
                              });
}

void LabelDialog::print()
{
    askPrinter(this, [this](QPagedPaintDevice& printer) {
        if (!printLabels(printer, m_labels, paper())) {
            m_services.messages.refuse(tr("The printer did not take the labels."));
            return;
        }
        remember();
        accept();
    });
}

} // namespace plumule::ui

#include "moc_label_dialog.cpp"
