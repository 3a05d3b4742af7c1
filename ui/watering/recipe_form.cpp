#include "ui/watering/recipe_form.h"

#include "core/journal/room/room_entries.h"
#include "core/journal/watering/watering_entries.h"
#include "ui/page/undoing.h"
#include "ui/watering/round_text.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/form_panel.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QGridLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

NumberField* recipeNumber(const QString& unit, const QString& accessibleName,
                          const QString& objectName, double high)
{
    auto* field = new NumberField(unit);
    field->setObjectName(objectName);
    field->setAccessibleName(accessibleName);
    field->setRange(0, high);
    field->setMinimumWidth(scaled(90));
    return field;
}

QWidget* band(NumberField* low, NumberField* high)
{
    auto* both = new QWidget;
    both->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(low, 1);
    row->addWidget(label(RecipeForm::tr("to"), "muted"));
    row->addWidget(high, 1);
    return both;
}

// mL/L of one shown unit of dose.
double millilitresPerLitreOfUnit(UnitSystem units)
{
    return units == UnitSystem::Metric ? 1.0 : millilitresPerLitreFrom(1.0);
}

} // namespace

RecipeForm::RecipeForm(Journal& journal, Services services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    build();
    reload();
}

void RecipeForm::build()
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    constexpr std::array kKinds = {WaterKind::Plain, WaterKind::PhSet, WaterKind::Nutrient};
    for (std::size_t i = 0; i < kKinds.size(); ++i) {
        column->addWidget(buildRecipe(kKinds[i], m_recipes[i]));
    }
    auto* mind = new Card(tr("Mind"), "caution");
    auto* words = label(tr("pH adjusters and concentrates burn skin and eyes: wear gloves and "
                           "glasses, follow the label, and never mix two of them undiluted."));
    words->setWordWrap(true);
    mind->body()->addWidget(words);
    column->addWidget(mind);
    column->addStretch(1);
}

QWidget* RecipeForm::buildRecipe(WaterKind water, Fields& fields)
{
    buildFields(water, fields);
    fields.panel = new FormPanel;
    auto* grid = new QGridLayout(fields.panel);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(scaled(12));
    grid->setVerticalSpacing(scaled(8));
    int line = 0;
    const auto add = [&](const QString& what, QWidget* field) {
        grid->addWidget(label(what, "muted"), line, 0);
        line += isTypeLarge() ? 1 : 0; // the field below its name
        grid->addWidget(field, line++, isTypeLarge() ? 0 : 1);
    };
    add(tr("Concentrate"), fields.concentrate);
    add(tr("Dose"), fields.dose);
    add(tr("pH"), band(fields.phLow, fields.phHigh));
    add(tr("EC"), band(fields.ecLow, fields.ecHigh));
    grid->setColumnStretch(isTypeLarge() ? 0 : 1, 1);
    auto* card = new Card(capitalised(nameOf(water)));
    card->body()->addWidget(fields.panel);
    card->body()->addWidget(fields.save, 0, Qt::AlignRight);
    connect(fields.panel, &FormPanel::entered, this, [this, &fields] { save(fields); });
    return card;
}

void RecipeForm::buildFields(WaterKind water, Fields& fields)
{
    const QString name = capitalised(nameOf(water));
    const QString key = QLatin1String(toText(water));
    fields.shown.water = water;
    fields.concentrate = new QLineEdit;
    fields.concentrate->setObjectName(key + "_concentrate");
    fields.concentrate->setAccessibleName(tr("%1: what is added").arg(name));
    fields.concentrate->setPlaceholderText(tr("nothing is added"));
    const auto number = [&](const QString& unit, const QString& what, const QString& field,
                            double high) {
        return recipeNumber(unit, tr("%1: %2").arg(name, what), key + '_' + field, high);
    };
    const QString conductivity = QStringLiteral("µS/cm");
    fields.dose = number(QString(), tr("dose"), "dose", 1000);
    fields.phLow = number(QString(), tr("lowest pH"), "ph_low", 14);
    fields.phHigh = number(QString(), tr("highest pH"), "ph_high", 14);
    fields.ecLow = number(conductivity, tr("lowest EC"), "ec_low", 20'000);
    fields.ecHigh = number(conductivity, tr("highest EC"), "ec_high", 20'000);
    fields.save = button(tr("Save"), "primary");
    fields.save->setObjectName(key + "_save");
    fields.save->setAccessibleName(tr("Save %1").arg(nameOf(water)));
    connect(fields.save, &QPushButton::clicked, this, [this, &fields] { save(fields); });
}

QString RecipeForm::doseUnit() const
{
    return m_units == UnitSystem::Metric ? QStringLiteral("mL/L") : QStringLiteral("fl oz/gal");
}

void RecipeForm::reload()
{
    const auto layout = m_journal.room().layout();
    const auto recipes = m_journal.watering().recipes();
    if (!layout || !recipes) {
        m_services.messages.refuse(sentence(layout ? recipes.error() : layout.error()));
        return;
    }
    const bool isUnitNew = m_units != layout->room.units;
    m_units = layout->room.units;
    for (Fields& fields : m_recipes) {
        for (const WaterRecipe& recipe : *recipes) {
            if (recipe.water == fields.shown.water &&
                (!fields.isFilled || isUnitNew || recipe != fields.shown)) {
                fill(fields, recipe);
            }
        }
    }
}

void RecipeForm::fill(Fields& fields, const WaterRecipe& recipe)
{
    fields.shown = recipe;
    fields.isFilled = true;
    fields.concentrate->setText(QString::fromStdString(recipe.concentrate));
    fields.dose->setUnit(doseUnit());
    std::optional<double> dose;
    if (recipe.dosePerLitre) {
        dose = inMillilitres(*recipe.dosePerLitre) / millilitresPerLitreOfUnit(m_units);
    }
    fields.dose->setNumber(dose, 3);
    fields.dose->setModified(false);
    fields.phLow->setNumber(recipe.phLow, 2);
    fields.phHigh->setNumber(recipe.phHigh, 2);
    fields.ecLow->setNumber(recipe.ecLow, 0);
    fields.ecHigh->setNumber(recipe.ecHigh, 0);
    fields.panel->settle();
}

bool RecipeForm::isChanged() const
{
    return std::any_of(m_recipes.begin(), m_recipes.end(),
                       [](const Fields& fields) { return fields.panel->isChanged(); });
}

bool RecipeForm::saveChanged()
{
    return std::all_of(m_recipes.begin(), m_recipes.end(), [this](Fields& fields) {
        return !fields.panel->isChanged() || save(fields);
    });
}

std::optional<WaterRecipe> RecipeForm::typed(const Fields& fields) const
{
    bool isSound = true;
    const auto read = [&isSound](NumberField* field) {
        const auto number = field->number();
        field->markWrong(!number.has_value());
        if (!number) {
            if (isSound) {
                field->setFocus();
            }
            isSound = false;
            return std::optional<double>();
        }
        return *number;
    };
    WaterRecipe recipe = fields.shown;
    recipe.concentrate = fields.concentrate->text().trimmed().toStdString();
    const auto dose = read(fields.dose);
    // What was not typed over keeps all its digits.
    if (fields.dose->isModified()) {
        recipe.dosePerLitre.reset();
        if (dose) {
            recipe.dosePerLitre = millilitres(*dose * millilitresPerLitreOfUnit(m_units));
        }
    }
    recipe.phLow = read(fields.phLow);
    recipe.phHigh = read(fields.phHigh);
    recipe.ecLow = read(fields.ecLow);
    recipe.ecHigh = read(fields.ecHigh);
    return isSound ? std::optional(recipe) : std::nullopt;
}

bool RecipeForm::save(Fields& fields)
{
    const auto recipe = typed(fields);
    if (!recipe) {
        m_services.messages.refuse(tr("Please check the marked number."));
        return false;
    }
    const auto changed = m_journal.watering().changeRecipe(*recipe);
    if (!changed) {
        m_services.messages.refuse(sentence(changed.error()));
        return false;
    }
    fill(fields, *changed);
    if (!m_journal.didLastIntentionChange()) {
        m_services.messages.tell(tr("Nothing was different: there was nothing to save."));
        return true;
    }
    tellDone(m_journal, m_services, tr("The recipe of %1 was saved.").arg(nameOf(changed->water)));
    return true;
}

} // namespace plumule::ui

#include "moc_recipe_form.cpp"
