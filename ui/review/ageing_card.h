#pragma once

#include "core/review/season/piece_ageing.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QGridLayout;

namespace plumule::ui {

// Whether a piece yields less the more often it was used, for each medium that is used again.
// Hidden where no trays can say so.
class AgeingCard : public Card
{
    Q_OBJECT

public:
    explicit AgeingCard(const Services& services, QWidget* parent = nullptr);

    void show(const std::vector<PieceAgeing>& ageing);

Q_SIGNALS:
    void trayAsked(plumule::TrayId tray);

private:
    Services m_services;
    QLabel* m_words = nullptr;
    QGridLayout* m_charts = nullptr;
};

// "Steel mesh: 2.1 g less with each further use (95% interval 0.5 to 3.7) …".
[[nodiscard]] QString ageingWords(const PieceAgeing& ageing);

} // namespace plumule::ui
