#pragma once

#include "ui/widget/widgets.h"

namespace plumule::ui {

// What to do next where there is nothing to show yet: sow, bring a table in, or look round the
// invented room.
class BeginBar : public Card
{
    Q_OBJECT

public:
    explicit BeginBar(QWidget* parent = nullptr);

    // Says what there is none of; an empty text hides the bar.
    void say(const QString& words);

Q_SIGNALS:
    void sowAsked();
    void importAsked();
    void sampleAsked();

private:
    QLabel* m_words = nullptr;
};

} // namespace plumule::ui
