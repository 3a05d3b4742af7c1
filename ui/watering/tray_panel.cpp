#include "ui/watering/tray_panel.h"

#include "ui/text/text.h"
#include "ui/widget/emptied.h"
#include "ui/widget/row_direction.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QKeyEvent>

namespace plumule::ui {
namespace {

QWidget* named(const QString& name, QWidget* field)
{
    auto* both = new QWidget;
    both->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    auto* column = new QVBoxLayout(both);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(3));
    auto* words = label(name, "muted");
    words->setBuddy(field);
    column->addWidget(words);
    column->addWidget(field);
    return both;
}

NumberField* measure(const char* objectName, const QString& accessibleName)
{
    auto* field = new NumberField;
    field->setObjectName(objectName);
    field->setAccessibleName(accessibleName);
    field->setMinimumWidth(scaled(80));
    return field;
}

// In the field's unit, whatever small amounts are measured with.
QString askedText(Volume amount, UnitSystem units)
{
    return units == UnitSystem::Metric ? numberText(inMillilitres(amount), 0)
                                       : numberText(inUsFluidOunces(amount), 1);
}

} // namespace

TrayPanel::TrayPanel(QWidget* parent)
    : QFrame(parent)
{
    setObjectName("trayPanel");
    setProperty("role", "panel");
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(14), scaled(10), scaled(14), scaled(12));
    column->setSpacing(scaled(10));
    buildFields();
    buildButtons();
    wireSignals();
}

void TrayPanel::buildFields()
{
    auto* column = qobject_cast<QVBoxLayout*>(layout());
    m_heading = label(QString(), "strong");
    m_photo = button(tr("Photo…"), "quiet");
    m_photo->setObjectName("attachPhoto");
    m_sheet = button(tr("Open its sheet"), "quiet");
    m_sheet->setObjectName("openSheet");
    m_note = new QLineEdit;
    m_note->setObjectName("note");
    m_note->setAccessibleName(tr("Note"));
    m_note->setPlaceholderText(tr("What you see"));
    auto* heading = new QBoxLayout(rowDirection());
    heading->addWidget(m_heading, 1);
    heading->addWidget(m_photo);
    heading->addWidget(m_sheet);
    column->addLayout(heading);
    column->addWidget(named(tr("Note"), m_note));
    buildMeasures();
    column->addLayout(m_measures);
}

void TrayPanel::buildMeasures()
{
    m_height = measure("height", tr("Height"));
    m_from = new Segmented({tr("Surface"), tr("Rim")});
    m_from->setObjectName("readFrom");
    m_from->segment(0)->setAccessibleName(tr("Height read from the medium's surface"));
    m_from->segment(1)->setAccessibleName(tr("Height read from the tray's rim"));
    m_given = measure("given", tr("Water given"));
    m_given->setRange(0, 100'000);
    m_ph = measure("ph", tr("pH of this tray's water"));
    m_ph->setRange(0, 14);
    m_ec = measure("ec", tr("EC of this tray's water"));
    m_ec->setRange(0, 20'000);
    m_ec->setUnit(QStringLiteral("µS/cm"));
    m_ec->setMinimumWidth(scaled(104));

    auto* heights = new QBoxLayout(rowDirection());
    heights->setSpacing(scaled(12));
    heights->addWidget(named(tr("Height"), m_height), 1);
    heights->addWidget(named(tr("Read from"), m_from), 0);
    auto* waters = new QBoxLayout(rowDirection());
    waters->setSpacing(scaled(12));
    waters->addWidget(named(tr("Water given"), m_given), 1);
    waters->addWidget(named(tr("pH"), m_ph), 1);
    waters->addWidget(named(tr("EC"), m_ec), 1);
    m_measures = new QBoxLayout(QBoxLayout::LeftToRight);
    m_measures->setSpacing(scaled(12));
    m_measures->addLayout(heights, 2);
    m_measures->addLayout(waters, 3);
}

void TrayPanel::buildButtons()
{
    auto* column = qobject_cast<QVBoxLayout*>(layout());
    m_close = button(tr("Close (Esc)"));
    m_close->setObjectName("closePanel");
    m_save = button(tr("Save (Enter)"), "primary");
    m_save->setObjectName("savePanel");
    auto* row = new QBoxLayout(rowDirection());
    row->setSpacing(scaled(6));
    row->addStretch(1);
    row->addWidget(m_close);
    row->addWidget(m_save);
    column->addLayout(row);
}

void TrayPanel::wireSignals()
{
    for (QLineEdit* field :
         std::initializer_list<QLineEdit*>{m_note, m_height, m_given, m_ph, m_ec}) {
        connect(field, &QLineEdit::returnPressed, this, &TrayPanel::saveAsked);
    }
    connect(m_save, &QPushButton::clicked, this, &TrayPanel::saveAsked);
    connect(m_close, &QPushButton::clicked, this, &TrayPanel::closeAsked);
    connect(m_photo, &QPushButton::clicked, this, &TrayPanel::photoAsked);
    connect(m_sheet, &QPushButton::clicked, this, &TrayPanel::sheetAsked);
}

void TrayPanel::begin(const RoundTray& tray, UnitSystem units)
{
    m_tray = tray.tray;
    m_units = units;
    const UnitText words(units);
    m_heading->setText(QString::fromStdString(tray.code));
    setAccessibleName(tr("About %1").arg(m_heading->text()));
    emptyForGood(*m_note);
    showLength(*m_height, std::nullopt, units);
    showVolume(*m_given, tray.given ? tray.given->amount : std::nullopt, units);
    m_given->setModified(false);
    m_given->setPlaceholderText(tray.amount ? askedText(*tray.amount, units) : QString());
    m_ph->setNumber(std::nullopt, 2);
    m_ec->setNumber(std::nullopt, 0);
    // Rims are read where the surface can't be reached; the depth must be known to correct them.
    const bool canCorrect = tray.medium.surfaceBelowRim.has_value();
    m_from->segment(1)->setToolTip(
        canCorrect ? tr("Corrected by the medium's depth of %1 below the rim.")
                         .arg(words.length(*tray.medium.surfaceBelowRim))
                   : tr("The medium's depth below the rim is not known, so that a reading from "
                        "the rim can't be corrected yet."));
}

void TrayPanel::focusOn(Part part)
{
    QLineEdit* field = part == Part::Note ? m_note : part == Part::Height ? m_height : m_given;
    field->setFocus();
    field->selectAll();
}

std::optional<TrayRemark> TrayPanel::remark()
{
    TrayRemark remark;
    bool isSound = true;
    const auto take = [&isSound](NumberField* field, const auto& read, auto& into) {
        field->markWrong(!read.has_value());
        if (read) {
            into = *read;
        } else if (std::exchange(isSound, false)) {
            field->setFocus();
        }
    };
    remark.tray = m_tray;
    remark.note = m_note->text().trimmed().toStdString();
    remark.from = m_from->chosen() == 0 ? ReadFrom::Surface : ReadFrom::Rim;
    take(m_height, lengthIn(*m_height, m_units), remark.height);
    take(m_given, volumeIn(*m_given, m_units), remark.given);
    take(m_ph, m_ph->number(), remark.ph);
    take(m_ec, m_ec->number(), remark.ec);
    if (!m_given->isModified()) {
        remark.given.reset();
    }
    return isSound ? std::optional(remark) : std::nullopt;
}

bool TrayPanel::isChanged() const
{
    const auto holdsText = [](const QLineEdit* field) {
        return !field->text().trimmed().isEmpty();
    };
    return holdsText(m_note) || holdsText(m_height) || holdsText(m_ph) || holdsText(m_ec) ||
           m_given->isModified();
}

void TrayPanel::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    const bool isBeside = m_measures->direction() == QBoxLayout::LeftToRight;
    m_measures->setDirection(standsBeside(width(), scaled(640), isBeside)
                                 ? QBoxLayout::LeftToRight
                                 : QBoxLayout::TopToBottom);
}

void TrayPanel::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        Q_EMIT closeAsked();
        return;
    }
    // Other keys must not reach the page: its letters act on rows.
    event->accept();
}

} // namespace plumule::ui

#include "moc_tray_panel.cpp"
