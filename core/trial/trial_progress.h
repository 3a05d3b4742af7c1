#pragma once

#include "core/tray/stage_plan.h"
#include "core/trial/trial_plan.h"

namespace plumule {

enum class TrialState
{
    Planned, // no tray of it is sown
    Growing, // a tray of it grows
    Ended    // all its trays are harvested or discarded
};

// A trial in the list of all.
struct TrialRow
{
    Trial trial;
    TrialState state = TrialState::Planned;
    std::vector<Medium> media; // of its trays, or planned; by id
    std::string variety;       // the only one; empty where there are several
    int trays = 0;             // sown, or planned
    int growing = 0;
    int harvested = 0;
    std::optional<Date> lastHarvest;
};

// What a growing trial lacks.
enum class TrialGap
{
    NoHeight,  // others of the trial were read on that day, this one was not
    NotWeighed // its harvest was due before today
};

struct TrialLack
{
    TrialGap gap = TrialGap::NoHeight;
    TrayId tray;
    std::string code;
    Date on;
};

struct TrialTray
{
    TrayRecord record;
    std::optional<Spot> spot; // where it stands or last stood
    StagePlan plan;
    int block = 1;
    int position = 1; // in the block
    Feeding feeding = Feeding::AsProtocol;
    std::optional<Mass> yield;
    std::optional<Mass> residue;
};

// A trial that is under way or done, by block, then position.
struct TrialProgress
{
    Trial trial;
    TrialState state = TrialState::Planned;
    std::optional<TrialDraft> draft; // what was planned; none for trials only named
    std::vector<TrialTray> trays;
    std::vector<TrialLack> lacks; // by day, then code
};

// What was written and photographed of one medium's trays on one day.
struct TrialDayOfMedium
{
    Medium medium;
    std::vector<std::pair<std::string, TrayNote>> notes; // tray code and note
    std::vector<std::pair<std::string, Photo>> photos;
};
struct TrialDay
{
    Date on;
    std::vector<TrialDayOfMedium> media;
};

} // namespace plumule
