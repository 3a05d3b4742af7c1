#include "core/review/model/model_plan.h"

namespace plumule {
namespace {

constexpr int kTrialsForRandom = 5;

// What the trays allow, before anything is fitted.
class PlanMaker
{
public:
    explicit PlanMaker(const ComparisonColumns& columns)
        : m_columns(columns)
        , m_trays(static_cast<int>(columns.table.rows()))
    {}

    [[nodiscard]] PlannedModel planned()
    {
        m_plan[ModelPart::Medium] = TermPlace::Fixed;
        if (m_columns.variesInFeeding) {
            planFeeding();
        }
        if (m_columns.varieties > 1) {
            m_plan[ModelPart::Variety] = TermPlace::Fixed;
        }
        if (m_columns.trialLevels > 1) {
            m_plan[ModelPart::Trial] =
                m_columns.trials >= kTrialsForRandom ? TermPlace::Random : TermPlace::Fixed;
        }
        if (m_columns.blocks > 1 || m_columns.isBlockPartlyUnknown) {
            planBlock();
        }
        if (m_columns.columns > 1) {
            planColumn();
        }
        if (m_columns.variesInDensity) {
            planDensity();
        }
        return {m_plan, m_leftOut};
    }

private:
    void leaveOut(ModelPart part, WhyLeftOut why)
    {
        m_plan[part] = TermPlace::LeftOut;
        m_leftOut[part] = why;
    }

    [[nodiscard]] bool isTrialRandom() const
    {
        const auto trial = m_plan.find(ModelPart::Trial);
        return trial != m_plan.end() && trial->second == TermPlace::Random;
    }

    [[nodiscard]] int fixedDf() const
    {
        int df = 1;
        for (const auto& [part, place] : m_plan) {
            df += place == TermPlace::Fixed ? levelsOf(m_columns, part) - 1 : 0;
        }
        return df;
    }

    // Shelves that were not part of a design may take up at most half of what is left over.
    void planBlock()
    {
        const bool isShelf = m_columns.blockKind == BlockKind::Shelf;
        const int left = m_trays - fixedDf();
        if (m_columns.isBlockPartlyUnknown) {
            leaveOut(ModelPart::Block, WhyLeftOut::PartlyUnknown);
        } else if (isShelf && 2 * (m_columns.blocks - 1) > left) {
            leaveOut(ModelPart::Block, WhyLeftOut::TooFewTrays);
        } else if (isShelf || m_columns.trialLevels == 1) {
            m_plan[ModelPart::Block] = TermPlace::Fixed;
        } else if (isTrialRandom()) {
            m_plan[ModelPart::Block] = TermPlace::Random;
        } else {
            m_plan[ModelPart::Block] = TermPlace::Fixed;
            leaveOut(ModelPart::Trial, WhyLeftOut::WithinBlocks);
        }
    }

    void planFeeding()
    {
        if (m_columns.isFeedingPartlyUnknown) {
            leaveOut(ModelPart::Feeding, WhyLeftOut::PartlyUnknown);
        } else if (!m_columns.isFeedingWithinMedium) {
            leaveOut(ModelPart::Feeding, WhyLeftOut::Confounded);
        } else {
            m_plan[ModelPart::Feeding] = TermPlace::Fixed;
        }
    }

    void planColumn()
    {
        if (m_trays - fixedDf() < m_columns.columns) {
            leaveOut(ModelPart::Column, WhyLeftOut::TooFewTrays);
        } else {
            m_plan[ModelPart::Column] = TermPlace::Fixed;
        }
    }

    void planDensity()
    {
        if (m_columns.isDensityPartlyUnknown) {
            leaveOut(ModelPart::SeedDensity, WhyLeftOut::PartlyUnknown);
        } else if (m_trays - fixedDf() < 3) {
            leaveOut(ModelPart::SeedDensity, WhyLeftOut::TooFewTrays);
        } else {
            m_plan[ModelPart::SeedDensity] = TermPlace::Fixed;
        }
    }

    const ComparisonColumns& m_columns;
    int m_trays;
    ModelPlan m_plan;
    std::map<ModelPart, WhyLeftOut> m_leftOut;
};

} // namespace

const char* columnOf(ModelPart part)
{
    switch (part) {
    case ModelPart::Medium:
        return column::kMedium;
    case ModelPart::Feeding:
        return column::kFeeding;
    case ModelPart::Variety:
        return column::kVariety;
    case ModelPart::Trial:
        return column::kTrial;
    case ModelPart::Block:
        return column::kBlock;
    case ModelPart::Column:
        return column::kColumn;
    case ModelPart::SeedDensity:
        return column::kDensity;
    }
    return "";
}

int levelsOf(const ComparisonColumns& columns, ModelPart part)
{
    const auto* factor = columns.table.factor(columnOf(part));
    return factor == nullptr ? 0 : static_cast<int>(factor->levels.size());
}

stats::ModelDescription describe(const ModelPlan& plan)
{
    stats::ModelDescription description;
    description.response = column::kValue;
    for (const auto& [part, place] : plan) {
        if (place == TermPlace::Fixed) {
            description.terms.push_back({columnOf(part)});
        } else if (place == TermPlace::Random) {
            description.randomIntercepts.push_back({columnOf(part)});
        }
    }
    return description;
}

PlannedModel planModel(const ComparisonColumns& columns)
{
    return PlanMaker(columns).planned();
}

} // namespace plumule
