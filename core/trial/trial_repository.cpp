#include "core/trial/trial_repository.h"

#include "core/storage/table.h"

namespace plumule {

template <>
struct TableOf<Trial>
{
    static constexpr const char* name = "trial";
    static constexpr auto columns = std::tuple{column("code", &Trial::code),
                                               column("name", &Trial::name),
                                               column("question", &Trial::question),
                                               column("margin_mg", &Trial::margin),
                                               column("control_medium_id", &Trial::control),
                                               column("started_on", &Trial::startedOn),
                                               column("note", &Trial::note)};
};

std::vector<Trial> TrialRepository::all()
{
    return selectRows<Trial>(m_database, "ORDER BY started_on DESC, id DESC");
}

std::map<TrialId, Trial> TrialRepository::byId()
{
    std::map<TrialId, Trial> trials;
    for (Trial& trial : all()) {
        const TrialId id = trial.id;
        trials.emplace(id, std::move(trial));
    }
    return trials;
}

std::optional<Trial> TrialRepository::find(TrialId trial)
{
    return findRow<Trial>(m_database, trial);
}

std::optional<Trial> TrialRepository::findByCode(const std::string& code)
{
    return selectRow<Trial>(m_database, "WHERE code = ?1 COLLATE NOCASE", code);
}

void TrialRepository::insert(Trial& trial)
{
    insertRow(m_database, trial);
}

void TrialRepository::update(const Trial& trial)
{
    updateRow(m_database, trial);
}

void TrialRepository::remove(TrialId trial)
{
    deleteRow<Trial>(m_database, trial);
}

bool TrialRepository::isInUse(TrialId trial)
{
    return m_database
        .prepare("SELECT 1 FROM tray WHERE trial_id = ?1 "
                 "UNION ALL SELECT 1 FROM panel WHERE trial_id = ?1 LIMIT 1")
        .bind(trial)
        .step();
}

std::vector<SownForTrial> TrialRepository::sown()
{
    Statement statement = m_database.prepare(
        "SELECT trial_id, medium_id, variety_id, count(*), sum(state = 'growing'), "
        "sum(state = 'harvested'), max(CASE WHEN state = 'harvested' THEN ended_on END) "
        "FROM tray WHERE trial_id IS NOT NULL GROUP BY trial_id, medium_id, variety_id "
        "ORDER BY trial_id, medium_id, variety_id");
    std::vector<SownForTrial> sown;
    while (statement.step()) {
        sown.push_back({statement.get<TrialId>(0), statement.get<MediumId>(1),
                        statement.get<VarietyId>(2), statement.get<int>(3), statement.get<int>(4),
                        statement.get<int>(5), statement.get<std::optional<Date>>(6)});
    }
    return sown;
}

} // namespace plumule
