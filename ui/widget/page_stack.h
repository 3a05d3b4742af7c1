#pragma once

#include <QStackedWidget>

namespace plumule::ui {

// Pages of which one is shown, and which is only as large as that one has to be: a usual stack is
// as wide and as tall as the largest of its pages, so that one would have all the others scrolled.
class PageStack : public QStackedWidget
{
public:
    explicit PageStack(QWidget* parent = nullptr);
    void addPage(QWidget* page);

    // No: it would be asked for all its pages, those not shown too.
    [[nodiscard]] bool hasHeightForWidth() const override { return false; }

protected:
    bool event(QEvent* event) override;
    // Of the page that is shown, in this width.
    [[nodiscard]] virtual int leastHeight() const;

private:
    void fit();
    void fitHeight();
};

} // namespace plumule::ui
