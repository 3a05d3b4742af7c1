#pragma once

#include <QStackedWidget>

namespace plumule::ui {

// Pages of which one is shown, and which is only as large as that one has to be: a usual stack is
// as wide as the widest of its pages, so that one wide page would have all the others scrolled
// sideways.
class PageStack : public QStackedWidget
{
public:
    explicit PageStack(QWidget* parent = nullptr);
    void addPage(QWidget* page);

private:
    void fit();
};

} // namespace plumule::ui
