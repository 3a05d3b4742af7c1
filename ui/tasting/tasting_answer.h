#pragma once

#include "core/tasting/tasting_result.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QBoxLayout;
class QTableView;

namespace plumule::ui {

class ChartCard;
class TableCard;
class TextTable;

// What a closed tasting says: a sentence, each attribute, the dots of one of them, the numbers, and
// what to bear in mind.
class TastingAnswer : public QWidget
{
    Q_OBJECT

public:
    explicit TastingAnswer(const Services& services, QWidget* parent = nullptr);

    void show(const TastingResult& result);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildAnswer();
    void buildNumbers(const Services& services);
    void showAttributes();
    void showAttribute(std::size_t attribute);
    void showScores(const AttributeResult& shown);
    void showPairs(const AttributeResult& shown);

    TastingResult m_shown;
    QLabel* m_headline = nullptr;
    QLabel* m_detail = nullptr;
    TableCard* m_attributeCard = nullptr;
    TextTable* m_attributes = nullptr;
    QLabel* m_attributeWords = nullptr;
    QBoxLayout* m_numbers = nullptr;
    ChartCard* m_chart = nullptr;
    TableCard* m_scoreCard = nullptr;
    TextTable* m_scores = nullptr;
    TableCard* m_pairCard = nullptr;
    TextTable* m_pairs = nullptr;
    QLabel* m_rankNote = nullptr;
    QLabel* m_caveats = nullptr;
    QLabel* m_better = nullptr;
};

} // namespace plumule::ui
