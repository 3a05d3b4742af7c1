#pragma once

#include "core/review/answer/season_answer.h"
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
    explicit RatingsView(const Services& services, QWidget* parent = nullptr);

    void show(const Result<TastingsOfSpan>& tastings);

private:
    void addTasting(const TastingOfSpan& tasting);
    void addOpen(int open, bool isAnyClosed);
    void addWords(const QString& text, const char* role);

    Services m_services;
    QVBoxLayout* m_panels = nullptr;
};

} // namespace plumule::ui
