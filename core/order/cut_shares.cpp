#include "core/order/cut_shares.h"

#include <algorithm>

namespace plumule {
namespace {

bool mayServe(const WeighedCut& cut, const Promise& promise)
{
    return promise.order.variety == cut.variety && cut.on <= promise.day &&
           promise.day <= cut.on + kDaysKept;
}

void add(SharesByPromise& shares, const PromiseKey& to, const WeighedCut& cut, Mass part)
{
    auto& list = shares[to];
    if (!list.empty() && list.back().cut == cut.id) {
        list.back().part += part;
    } else {
        list.push_back({cut.id, cut.code, cut.on, part, cut.byHand.has_value()});
    }
}

// `promises` by key.
void shareByRule(const std::vector<Promise>& promises, const WeighedCut& cut,
                 SharesByPromise& shares)
{
    Mass left = cut.net;
    const Promise* last = nullptr;
    for (const Promise& promise : promises) {
        if (!mayServe(cut, promise)) {
            continue;
        }
        if (last == nullptr) {
            last = &promise;
        }
        const auto found = shares.find(promise.key());
        const Mass has = found == shares.end() ? Mass{} : sumOf(found->second);
        const Mass part = std::min(left, std::max(Mass{}, promise.order.amount - has));
        if (part > Mass{}) {
            add(shares, promise.key(), cut, part);
            left -= part;
            last = &promise;
        }
    }
    if (last != nullptr && left > Mass{}) {
        add(shares, last->key(), cut, left);
    }
}

} // namespace

Mass sumOf(const std::vector<CutShare>& shares)
{
    Mass sum;
    for (const CutShare& share : shares) {
        sum += share.part;
    }
    return sum;
}

SharesByPromise shareCuts(const std::vector<Promise>& promises, const std::vector<WeighedCut>& cuts)
{
    SharesByPromise shares;
    std::vector<const WeighedCut*> byRule;
    for (const WeighedCut& cut : cuts) {
        if (!cut.byHand) {
            byRule.push_back(&cut);
        } else if (cut.byHand->order && cut.byHand->day) {
            add(shares, {*cut.byHand->day, *cut.byHand->order}, cut, cut.net);
        }
    }
    std::stable_sort(byRule.begin(), byRule.end(), [](const WeighedCut* a, const WeighedCut* b) {
        return std::pair(a->on, a->minute) < std::pair(b->on, b->minute);
    });
    std::vector<Promise> inOrder = promises;
    std::sort(inOrder.begin(), inOrder.end(), isBefore);
    for (const WeighedCut* cut : byRule) {
        shareByRule(inOrder, *cut, shares);
    }
    return shares;
}

} // namespace plumule
