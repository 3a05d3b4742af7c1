#pragma once

#include "ui/merge/met_words.h"
#include "ui/widget/widgets.h"

namespace plumule::ui {

class KeyButton;

// One thing that was changed on both sides: what it is, and the two sides beside each other, of
// which one is kept. Where there is no room beside, they stand below one another.
class MetRow : public Card
{
    Q_OBJECT

public:
    MetRow(const MergeItem& item, const MetWords& words, const QString& copy,
           QWidget* parent = nullptr);

    [[nodiscard]] const std::vector<Family>& families() const { return m_families; }
    [[nodiscard]] bool isChosen() const { return m_isChosen; }
    // Puts the focus on the side that is chosen, or on the first.
    void begin();

Q_SIGNALS:
    void chosen(int side); // 0: here

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* buildSide(const MergeItem& item, const MetWords& words, Side side,
                       const QString& title);

    std::vector<Family> m_families;
    QBoxLayout* m_beside = nullptr;
    KeyButton* m_keep[2] = {nullptr, nullptr};
    bool m_isChosen = false;
};

} // namespace plumule::ui
