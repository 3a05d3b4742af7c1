// Part of ui/trial/plan_form.h: the fields and their rows.
#include "ui/trial/plan_form.h"

#include "ui/widget/amount_field.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"
#include "ui/widget/time_field.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QMenu>
#include <QSpinBox>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

template <class Widget>
Widget* named(Widget* widget, const char* name, const QString& accessibleName)
{
    widget->setObjectName(name);
    widget->setAccessibleName(accessibleName);
    return widget;
}

QComboBox* choiceBox(const char* name, const QString& accessibleName)
{
    auto* box = named(new QComboBox, name, accessibleName);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(5);
    return box;
}

// A field below its name.
QVBoxLayout* under(const QString& name, QWidget* field, QWidget* words = nullptr)
{
    auto* stack = new QVBoxLayout;
    stack->setSpacing(scaled(3));
    auto* caption = label(name, "muted");
    caption->setBuddy(field);
    stack->addWidget(caption);
    stack->addWidget(field);
    if (words != nullptr) {
        stack->addWidget(words);
    }
    stack->addStretch(1);
    return stack;
}

// Fields beside each other, or in large type below one another; the first is as wide as `first`
// says, the others as one.
QGridLayout* side(std::initializer_list<QLayout*> fields, int first = 1)
{
    auto* row = new QGridLayout;
    row->setHorizontalSpacing(scaled(10));
    const bool isBelow = isTypeLarge();
    for (QLayout* field : fields) {
        const int number = row->count();
        const int column = isBelow ? 0 : number;
        row->addLayout(field, isBelow ? number : 0, column);
        row->setColumnStretch(column, column == 0 ? first : 1);
        row->setColumnMinimumWidth(column, scaled(60));
    }
    return row;
}

QLabel* smallWords(const char* name)
{
    auto* words = label(QString(), "muted");
    words->setObjectName(name);
    words->setWordWrap(true);
    words->setFont(uiFont(0.9));
    words->hide();
    return words;
}

} // namespace

PlanForm::PlanForm(Journal& journal, QWidget* parent)
    : FormPanel(parent)
    , m_journal(journal)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(9));
    buildQuestion(*column);
    buildSowing(*column);
    buildSize(*column);
    fillChoices();
    wireSignals();
}

void PlanForm::buildQuestion(QVBoxLayout& column)
{
    m_question = named(new QLineEdit, "planQuestion", tr("Question"));
    m_question->setPlaceholderText(tr("Which gives most a tray?"));
    m_compared = named(button(tr("Media…")), "planMedia", tr("Media compared"));
    setRole(m_compared, "menu");
    m_mediaMenu = new QMenu(m_compared);
    m_compared->setMenu(m_mediaMenu);
    m_mediaNames = new QWidget;
    m_mediaNames->setObjectName("planMediaNames");
    new FlowLayout(m_mediaNames);
    m_control = choiceBox("planControl", tr("Control"));
    m_feeding = choiceBox("planFeeding", tr("Feeding"));
    addChoice(*m_feeding, tr("by protocol"), false);
    addChoice(*m_feeding, tr("fed and unfed"), true);
    m_name = named(new QLineEdit, "planName", tr("Short name"));
    m_name->setPlaceholderText(tr("as the question"));
    column.addLayout(side({under(tr("Question"), m_question), under(tr("Short name"), m_name)}, 2));
    column.addLayout(side({under(tr("Compared"), m_compared), under(tr("Control"), m_control),
                           under(tr("Feeding"), m_feeding)}));
    column.addWidget(m_mediaNames);
}

void PlanForm::buildSowing(QVBoxLayout& column)
{
    m_variety = choiceBox("planVariety", tr("Variety"));
    m_lot = choiceBox("planLot", tr("Seed lot"));
    m_seed = named(new NumberField, "planSeed", tr("Seed a tray"));
    m_day = new DateField("planDay");
    m_day->setAccessibleName(tr("Day of sowing"));
    m_time = new TimeField("planTime");
    m_time->setAccessibleName(tr("Time of sowing"));
    m_soak = named(new QCheckBox(tr("begin with the soak")), "planSoak", tr("Begin with the soak"));
    m_person = named(new QLineEdit, "planPerson", tr("Sown by"));
    column.addLayout(side({under(tr("Variety"), m_variety), under(tr("Seed lot"), m_lot),
                           under(tr("Seed a tray"), m_seed)}));
    column.addLayout(side(
        {under(tr("Sown on"), m_day), under(tr("At"), m_time), under(tr("Sown by"), m_person)}));
    column.addWidget(m_soak);
}

void PlanForm::buildSize(QVBoxLayout& column)
{
    m_margin = named(new NumberField, "planMargin", tr("Difference that matters, a tray"));
    m_margin->setPlaceholderText(tr("a tray"));
    m_marginWords = smallWords("planMarginWords");
    m_spread = named(new NumberField, "planSpread", tr("Tray-to-tray spread"));
    m_spread->setPlaceholderText(tr("this room's own"));
    m_spreadWords = smallWords("planSpreadWords");
    for (NumberField* field : {m_seed, m_margin, m_spread}) {
        field->setMaximumWidth(QWIDGETSIZE_MAX);
    }
    m_design = choiceBox("planDesign", tr("Layout"));
    addChoice(*m_design, tr("blocks, one a shelf"), Design::RandomizedBlocks);
    addChoice(*m_design, tr("completely random"), Design::CompletelyRandom);
    addChoice(*m_design, tr("Latin square"), Design::LatinSquare);
    m_blocks = named(new QSpinBox, "planBlocks", tr("Blocks"));
    m_blocks->setRange(2, 50);
    m_each = named(new QSpinBox, "planEach", tr("Trays of each"));
    m_each->setRange(1, 100);
    column.addLayout(side({under(tr("Difference that matters"), m_margin, m_marginWords),
                           under(tr("Tray-to-tray spread"), m_spread, m_spreadWords)}));
    column.addLayout(side({under(tr("Layout"), m_design), under(tr("Blocks"), m_blocks),
                           under(tr("Trays of each"), m_each)},
                          2));
}

} // namespace plumule::ui
