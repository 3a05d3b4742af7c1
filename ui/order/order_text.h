#pragma once

#include "core/journal/order/order_book.h"
#include "ui/text/text.h"

namespace plumule::ui {

// "Canteen, Thu 10 Dec"; without a customer the day alone.
[[nodiscard]] QString promiseText(const Promise& promise);
// "every Thursday from 10 Dec on"; empty for one day.
[[nodiscard]] QString standingText(const Order& order);

// "1,052 g cut; 4 trays, 1,040 g".
[[nodiscard]] QString growingText(const OrderLine& line, const UnitText& units);
// When what is needed is to be sown: "is sown", "Tue 1 Dec", "too late".
[[nodiscard]] QString sowText(const OrderLine& line);
// "7 of 10 free"; empty where nothing is to be sown.
[[nodiscard]] QString placesText(const OrderLine& line);
// "210 g of 480 g".
[[nodiscard]] QString seedText(const OrderLine& line, const UnitText& units);
// In 100, rounded so that what is below the chance wanted never reads as if it were not.
[[nodiscard]] int inHundred(double chance);

// What is to be done for the promise, and how often it is met then.
[[nodiscard]] QString planText(const OrderLine& line);
// What is missing for that, sentence by sentence: places, pieces, seed, time.
[[nodiscard]] QStringList lackTexts(const OrderLine& line, const UnitText& units);
// From how many trays it is known what a tray gives, or that it is known from memory only.
[[nodiscard]] QString basisText(const YieldModel& model);

// "kept, +43 g", "short, −39 g".
[[nodiscard]] QString keptText(const PastPromise& past, const UnitText& units);

// The day on which work on the sowing begins, with its soak where the protocol has one.
[[nodiscard]] Moment beginOf(const SowingNeed& need);
// By which rule cuts and growing trays go to promises.
[[nodiscard]] QString sharingRule();

} // namespace plumule::ui
