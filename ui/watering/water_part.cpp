#include "ui/watering/water_part.h"

#include "ui/watering/recipe_form.h"
#include "ui/widget/widgets.h"

#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

// In the order of SmallVolume.
const QStringList kSmallKeys{QStringLiteral("fl_oz"), QStringLiteral("tsp"), QStringLiteral("ml")};

} // namespace

WaterPart::WaterPart(Journal& journal, Services services, QWidget* parent)
    : SetupPart(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner));
    m_form = new RecipeForm(journal, services, this);
    inner->addWidget(m_form);
    m_smallCard = buildSmallVolumes();
    inner->addWidget(m_smallCard);
    inner->addStretch(1);
}

QString WaterPart::name() const
{
    return tr("Water");
}

bool WaterPart::concerns(Concept about) const
{
    return about == Concept::Watering || about == Concept::Room;
}

void WaterPart::reload()
{
    m_form->reload();
    m_smallCard->setVisible(room().units == UnitSystem::UsCustomary);
}

bool WaterPart::hasUnsaved() const
{
    return m_form->isChanged();
}

bool WaterPart::saveTyped()
{
    return m_form->saveChanged();
}

QWidget* WaterPart::buildSmallVolumes()
{
    auto* card = new Card(tr("Amounts under a US cup, on this computer"));
    m_small = new Segmented({tr("fl oz"), tr("tsp"), tr("mL")});
    m_small->setObjectName("smallVolumes");
    m_small->choose(
        std::max(0, static_cast<int>(kSmallKeys.indexOf(
                        services().preferences.get(Preference::SmallVolumes).toString()))));
    auto* words = label(tr("Say them as you measure them. Concentrate under a fluid ounce is "
                           "always said in mL."),
                        "muted");
    words->setWordWrap(true);
    card->body()->addWidget(words);
    card->body()->addWidget(m_small, 0, Qt::AlignLeft);
    connect(m_small, &Segmented::chosenByHand, this, [this](int index) {
        services().preferences.set(Preference::SmallVolumes, kSmallKeys.at(index));
        applySmallVolumes(services().preferences);
        for (Page* page : window()->findChildren<Page*>()) {
            page->noteChange();
        }
    });
    return card;
}

void WaterPart::applySmallVolumes(const Preferences& preferences)
{
    const qsizetype index =
        kSmallKeys.indexOf(preferences.get(Preference::SmallVolumes).toString());
    UnitText::measureSmallIn(index < 0 ? SmallVolume::FluidOunce : static_cast<SmallVolume>(index));
}

} // namespace plumule::ui

#include "moc_water_part.cpp"
