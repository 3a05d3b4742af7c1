#pragma once

#include "ui/page/setup_part.h"

namespace plumule::ui {

class RecipeForm;

// How each kind of water is made.
class WaterPart : public SetupPart
{
    Q_OBJECT

public:
    WaterPart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

private:
    RecipeForm* m_form = nullptr;
};

} // namespace plumule::ui
