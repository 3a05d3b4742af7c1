#include "ui/rack/rack_accessible.h"

#include "ui/rack/rack_view.h"

#include <QAccessibleWidget>
#include <QPointer>

#include <map>

namespace plumule::ui {
namespace {

// One place, by its number in the view.
class PlaceAccessible : public QAccessibleInterface
{
public:
    PlaceAccessible(RackView& view, int cell)
        : m_view(&view)
        , m_cell(cell)
    {}

    [[nodiscard]] bool isValid() const override
    {
        return m_view != nullptr && m_cell < m_view->cellCount();
    }
    [[nodiscard]] QObject* object() const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* parent() const override
    {
        return QAccessible::queryAccessibleInterface(m_view);
    }
    [[nodiscard]] QAccessibleInterface* child(int) const override { return nullptr; }
    [[nodiscard]] QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    [[nodiscard]] int childCount() const override { return 0; }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    [[nodiscard]] QString text(QAccessible::Text kind) const override
    {
        return kind == QAccessible::Name && isValid() ? m_view->wordsOf(m_cell) : QString();
    }
    void setText(QAccessible::Text, const QString&) override {}
    [[nodiscard]] QRect rect() const override
    {
        const QRect area = isValid() ? m_view->areaOf(m_cell) : QRect();
        return {m_view ? m_view->mapToGlobal(area.topLeft()) : QPoint(), area.size()};
    }
    [[nodiscard]] QAccessible::Role role() const override { return QAccessible::ListItem; }
    [[nodiscard]] QAccessible::State state() const override
    {
        QAccessible::State state;
        state.focusable = true;
        state.selectable = true;
        state.focused = isValid() && m_view->hasFocus() && m_view->cursor() == m_cell;
        return state;
    }

private:
    QPointer<RackView> m_view;
    int m_cell;
};

class RacksAccessible : public QAccessibleWidget
{
public:
    explicit RacksAccessible(RackView* view)
        : QAccessibleWidget(view, QAccessible::List)
        , m_view(*view)
    {}
    ~RacksAccessible() override
    {
        for (const auto& [cell, id] : m_places) {
            QAccessible::deleteAccessibleInterface(id);
        }
    }

    [[nodiscard]] int childCount() const override { return m_view.cellCount(); }
    [[nodiscard]] QAccessibleInterface* child(int cell) const override
    {
        if (cell < 0 || cell >= m_view.cellCount()) {
            return nullptr;
        }
        const auto found = m_places.find(cell);
        if (found != m_places.end()) {
            return QAccessible::accessibleInterface(found->second);
        }
        auto* place = new PlaceAccessible(m_view, cell);
        m_places[cell] = QAccessible::registerAccessibleInterface(place);
        return place;
    }
    [[nodiscard]] int indexOfChild(const QAccessibleInterface* child) const override
    {
        for (const auto& [cell, id] : m_places) {
            if (QAccessible::accessibleInterface(id) == child) {
                return cell;
            }
        }
        return -1;
    }
    [[nodiscard]] QAccessibleInterface* childAt(int x, int y) const override
    {
        for (int cell = 0; cell < m_view.cellCount(); ++cell) {
            if (child(cell)->rect().contains(x, y)) {
                return child(cell);
            }
        }
        return nullptr;
    }
    [[nodiscard]] QAccessibleInterface* focusChild() const override
    {
        return m_view.hasFocus() ? child(m_view.cursor()) : nullptr;
    }

private:
    RackView& m_view;
    mutable std::map<int, QAccessible::Id> m_places; // those that were asked for
};

QAccessibleInterface* interfaceOf(const QString&, QObject* object)
{
    auto* view = qobject_cast<RackView*>(object);
    return view == nullptr ? nullptr : new RacksAccessible(view);
}

} // namespace

void readRacksOut()
{
    static const bool isDone = [] {
        QAccessible::installFactory(&interfaceOf);
        return true;
    }();
    Q_UNUSED(isDone)
}

void tellCursor(RackView& view)
{
    if (QAccessible::isActive() && view.hasFocus()) {
        QAccessibleEvent moved(&view, QAccessible::Focus);
        moved.setChild(view.cursor());
        QAccessible::updateAccessibility(&moved);
    }
}

} // namespace plumule::ui
