#pragma once

#include <functional>
#include <stop_token>

namespace plumule {

// How far a long piece of work is, and whether it should stop. Used from the worker's thread.
class Progress
{
public:
    using Report = std::function<void(double fraction)>;

    Progress() = default;
    Progress(Report report, std::stop_token stop)
        : m_report(std::move(report))
        , m_stop(std::move(stop))
    {}

    void report(double fraction) const
    {
        if (m_report) {
            m_report(fraction);
        }
    }
    // Of a part of the work, from one fraction of the whole to another.
    [[nodiscard]] Progress part(double from, double to) const
    {
        if (!m_report) {
            return *this;
        }
        return {[report = m_report, from, to](double fraction) {
                    report(from + fraction * (to - from));
                },
                m_stop};
    }
    [[nodiscard]] bool isStopped() const { return m_stop.stop_requested(); }

private:
    Report m_report;
    std::stop_token m_stop;
};

} // namespace plumule
