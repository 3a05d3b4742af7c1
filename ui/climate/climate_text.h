#pragma once

#include "core/climate/logger_file.h"
#include "core/climate/logger_merge.h"
#include "core/journal/climate/climate_answers.h"
#include "ui/text/text.h"

namespace plumule::ui {

// What climate is said in. Sentences; empty where there is nothing to say.

// Which loggers tell it, and where its light is from.
[[nodiscard]] QString sourceWords(const TrayClimate& climate);
// Of how many days too few hours were read.
[[nodiscard]] QString missingWords(const std::vector<ClimateDay>& days);
// What a day's numbers need.
[[nodiscard]] QString ruleWords();

// "shelf A1", "rack A", "the whole room".
[[nodiscard]] QString placeName(const ClimateLogger& logger, const RoomLayout& layout);
// By which clock a file's times are read, and what that does to the two nights a year.
[[nodiscard]] QString clockName(LoggerClock clock);
[[nodiscard]] QString clockWords(LoggerClock clock);
[[nodiscard]] QString nameOf(DayOrder order);
// "1 Feb 2026, 06:50".
[[nodiscard]] QString dayAndTimeText(Moment at);
// What a file comes to: its readings and days, and what of it is new.
[[nodiscard]] QStringList readingWords(const LoggerReadings& readings);
[[nodiscard]] QStringList mergeWords(const HourMerge& merge);

} // namespace plumule::ui
