#pragma once

#include "core/journal/order/order_book.h"
#include "ui/text/text.h"
#include "ui/widget/widgets.h"

class QBoxLayout;
class QGridLayout;

namespace plumule::ui {

class ChartView;
class KeyButton;

// One promise to come: what to sow for it and when, how often that meets it, and what it is known
// from.
class OrderCard : public Card
{
    Q_OBJECT

public:
    explicit OrderCard(QWidget* parent = nullptr);

    // `mayChange`: false in a journal that is open to read only.
    void show(const OrderLine& line, const UnitText& units, Date today, bool mayChange);
    void showNothing();

Q_SIGNALS:
    void sowAsked();
    void changeAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* buildFacts();
    void showFacts(const OrderLine& line, const UnitText& units);
    void addFact(const QString& name, const QString& value);

    QLabel* m_plan = nullptr;
    QLabel* m_lacks = nullptr;
    QWidget* m_body = nullptr;
    QBoxLayout* m_beside = nullptr;
    ChartView* m_chart = nullptr;
    QGridLayout* m_facts = nullptr;
    QLabel* m_growing = nullptr;
    KeyButton* m_sow = nullptr;
    QPushButton* m_change = nullptr;
    QLabel* m_standing = nullptr;
};

// Whether it is time to sow for the promise.
[[nodiscard]] bool isTimeToSow(const OrderLine& line, Date today);

} // namespace plumule::ui
