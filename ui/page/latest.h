#pragma once

#include <utility>

namespace plumule::ui {

// Hands on only what answers the latest question: what was asked before is of no use by then.
class Latest
{
public:
    // `done`, for the question that is asked now. This must outlive the answer.
    template <class DoneCall>
    [[nodiscard]] auto only(DoneCall done)
    {
        return [this, number = ++m_asked, done = std::move(done)](const auto& answer) {
            if (number == m_asked) {
                done(answer);
            }
        };
    }

    // What was asked is of no use any more, and nothing is asked in its place.
    void forget() { ++m_asked; }

private:
    int m_asked = 0;
};

} // namespace plumule::ui
