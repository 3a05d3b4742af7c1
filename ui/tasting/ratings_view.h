#pragma once

#include "core/review/facts/season.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QVBoxLayout;

namespace plumule::ui {

// What tasters said of the media in a span: each closed tasting with its verdict, attribute by
// attribute. Tastings are not summed up over panels: tasters and attributes differ.
class RatingsView : public QWidget
{
    Q_OBJECT

public:
    RatingsView(Journal& journal, const Services& services, QWidget* parent = nullptr);

    void show(const SeasonFilter& filter);

private:
    // False where there is none to be had.
    bool addAnswer(const Panel& panel);

    Journal& m_journal;
    Services m_services;
    QVBoxLayout* m_panels = nullptr;
};

} // namespace plumule::ui
