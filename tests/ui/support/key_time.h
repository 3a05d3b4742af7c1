#pragma once

#include "ui/widget/burst.h"
#include "ui/widget/lone_key.h"

#include <QWidget>

#include <functional>

namespace plumule::ui {

// Time that goes by the keys: a person presses one each 120 ms, a label scanner each 5 ms.
class KeyTime
{
public:
    // Stands in for the stamps of the keys wherever something in there asks how fast they come.
    void rule(QWidget& within)
    {
        const auto next = [this] { return m_now += m_gap; };
        for (BurstReader* reader : within.findChildren<BurstReader*>()) {
            reader->clock().setSource(next);
        }
        for (LoneKey* letter : within.findChildren<LoneKey*>()) {
            letter->clock().setSource(next);
        }
    }
    // A scanner presses the keys, a while after those before.
    void scan(const std::function<void()>& keys)
    {
        m_now += 2000;
        m_gap = 5;
        keys();
        m_gap = 120;
    }

private:
    qint64 m_now = 0;
    qint64 m_gap = 120;
};

} // namespace plumule::ui
