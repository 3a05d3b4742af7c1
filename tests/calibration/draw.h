#pragma once

#include <cstdint>
#include <random>

namespace plumule::calibration {

// Random numbers of one set, from its own fixed seed.
class Draw
{
public:
    explicit Draw(std::uint64_t seed)
        : m_engine(seed)
    {}

    double normal(double sd = 1) { return sd * m_normal(m_engine); }
    double uniform() { return m_uniform(m_engine); }
    std::size_t below(std::size_t count)
    {
        return std::uniform_int_distribution<std::size_t>(0, count - 1)(m_engine);
    }
    double studentT(double df) { return std::student_t_distribution<double>(df)(m_engine); }
    std::mt19937_64& engine() { return m_engine; }

private:
    std::mt19937_64 m_engine;
    std::normal_distribution<double> m_normal;
    std::uniform_real_distribution<double> m_uniform;
};

} // namespace plumule::calibration
