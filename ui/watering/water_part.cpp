#include "ui/watering/water_part.h"

#include "ui/watering/recipe_form.h"
#include "ui/widget/widgets.h"

#include <QScrollArea>
#include <QVBoxLayout>

namespace plumule::ui {

WaterPart::WaterPart(Journal& journal, Services services, QWidget* parent)
    : SetupPart(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    QVBoxLayout* inner = nullptr;
    column->addWidget(scrolling(inner));
    m_form = new RecipeForm(journal, services, this);
    inner->addWidget(m_form);
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
}

} // namespace plumule::ui

#include "moc_water_part.cpp"
