#pragma once

#include "ui/page/setup_part.h"

namespace plumule::ui {

class RecipeForm;
class Segmented;

// How each kind of water is made.
class WaterPart : public SetupPart
{
    Q_OBJECT

public:
    WaterPart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    [[nodiscard]] bool hasUnsaved() const override;
    bool saveTyped() override;

    // What the preference says, for the whole program.
    static void applySmallVolumes(const Preferences& preferences);

private:
    [[nodiscard]] QWidget* buildSmallVolumes();

    RecipeForm* m_form = nullptr;
    Segmented* m_small = nullptr;
    QWidget* m_smallCard = nullptr;
};

} // namespace plumule::ui
