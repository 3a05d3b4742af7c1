// Part of ui/tray/sow_dialog.h: the fields and their rows.
#include "ui/tray/sow_dialog.h"

#include "ui/widget/amount_field.h"
#include "ui/widget/check_list.h"
#include "ui/widget/date_field.h"
#include "ui/widget/theme.h"
#include "ui/widget/time_field.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QSpinBox>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kBesideWidth = 760;

template <class Field>
Field* withName(Field* field, const char* name)
{
    field->setObjectName(QString::fromLatin1(name));
    return field;
}

} // namespace

void SowDialog::makeFields()
{
    const Moment now = m_journal.clock().now();
    m_variety = withName(new QComboBox, "variety");
    m_lot = withName(new QComboBox, "lot");
    m_medium = withName(new QComboBox, "medium");
    m_count = withName(new QSpinBox, "count");
    m_count->setRange(1, 400);
    m_seed = withName(new NumberField, "seed");
    m_day = new DateField("day");
    m_day->setAccessibleName(tr("Day of sowing"));
    m_day->setDate(now.date);
    m_time = new TimeField("time");
    m_time->setAccessibleName(tr("Time of sowing"));
    m_time->setMinute(now.minute);
    m_soak = withName(new QCheckBox(tr("begin with the soak now")), "soak");
    m_harvest = new DateField("harvest");
    m_dates = withName(label(QString(), "muted"), "dates");
    m_dates->setWordWrap(true);
    m_trial = withName(new QComboBox, "trial");
    m_block = withName(new QSpinBox, "block");
    m_block->setRange(0, 99);
    m_block->setSpecialValueText(tr("none"));
    m_person = withName(new QLineEdit, "person");
    m_code = withName(new QLineEdit, "code");
    for (QComboBox* box : {m_variety, m_lot, m_medium, m_trial}) {
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(12);
    }
}

QWidget* SowDialog::buildWhat()
{
    auto* what = new QWidget;
    auto* form = fieldForm();
    what->setLayout(form);
    auto* when = new QHBoxLayout;
    when->addWidget(m_day, 2);
    when->addWidget(m_time, 1);
    form->addRow(tr("Variety"), m_variety);
    form->addRow(tr("Seed lot"), m_lot);
    form->addRow(tr("Medium"), m_medium);
    form->addRow(tr("Trays"), m_count);
    form->addRow(tr("Seed a tray"), m_seed);
    form->addRow(tr("Sown on"), when);
    form->addRow(QString(), m_soak);
    form->addRow(tr("To be cut on"), m_harvest);
    form->addRow(QString(), m_dates);
    form->addRow(tr("Trial"), m_trial);
    form->addRow(tr("Block"), m_block);
    form->addRow(tr("Sown by"), m_person);
    form->addRow(tr("Code"), m_code);
    return what;
}

QWidget* SowDialog::buildWhere()
{
    auto* where = new QWidget;
    auto* column = new QVBoxLayout(where);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(label(tr("Places, in walking order"), "strong"));
    m_places = new CheckList("places");
    m_places->setAccessibleName(tr("Places, in walking order"));
    column->addWidget(m_places, 2);
    m_piecesWords = label(tr("Clean pieces of this medium"), "strong");
    m_piecesWords->setWordWrap(true);
    m_pieces = new CheckList("pieces");
    m_pieces->setAccessibleName(tr("Clean pieces of this medium"));
    column->addWidget(m_piecesWords);
    column->addWidget(m_pieces, 1);
    for (CheckList* list : {m_places, m_pieces}) {
        list->setMinimumHeight(scaled(150));
    }
    return where;
}

void SowDialog::resizeEvent(QResizeEvent* event)
{
    FormDialog::resizeEvent(event);
    const bool wasBeside = m_columns->direction() == QBoxLayout::LeftToRight;
    m_columns->setDirection(standsBeside(width(), scaled(kBesideWidth), wasBeside)
                                ? QBoxLayout::LeftToRight
                                : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui
