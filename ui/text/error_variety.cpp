// Part of ui/text/error_words.h: what a variety, its protocol and its seed lots refuse.
#include "ui/text/error_words.h"

namespace plumule::ui {

QString words(VarietyReason reason, const Error& error)
{
    const ErrorValues value(error);
    switch (reason) {
    case VarietyReason::Unknown:
        return Errors::tr("This variety is not in the journal any more: choose another one.");
    case VarietyReason::NameMissing:
        return Errors::tr("The variety has no name: give it one.");
    case VarietyReason::NameTaken:
        return Errors::tr("There is a variety %1 already: choose another name, or change that one.")
            .arg(value[0]);
    case VarietyReason::InUse:
        return Errors::tr(
                   "Trays or seed lots hang on %1, so it stays: mark it as no longer sown instead.")
            .arg(value[0]);
    case VarietyReason::PrefixMissing:
        return Errors::tr(
            "The codes of its trays need two letters to begin with: enter them, such as RD.");
    case VarietyReason::PrefixForm:
        return Errors::tr("“%1” can't begin a tray's code: enter two letters from A to Z.")
            .arg(value[0]);
    case VarietyReason::SeedPerTray:
        return Errors::tr("The seed for a tray weighs more than nothing: enter its weight, or "
                          "leave the field empty.");
    case VarietyReason::StageOrder:
        return Errors::tr("The stage “%1” is out of its order or comes twice: keep soak, under "
                          "weight, blackout and light in this order, each once.")
            .arg(value.stage(0));
    case VarietyReason::StageLength:
        return Errors::tr("The stage “%1” takes no time: enter how long it is, or take it out.")
            .arg(value.stage(0));
    case VarietyReason::StageWaterings:
        return Errors::tr("The stage “%1” is watered in the rounds, so not more than %n "
                          "time(s) a day: choose fewer.",
                          nullptr, value.number(1))
            .arg(value.stage(0));
    case VarietyReason::StageMethod:
        return Errors::tr("The stage “%1” is watered, but in no way: choose how, or take the "
                          "waterings and the amount out.")
            .arg(value.stage(0));
    case VarietyReason::StageAmount:
        return Errors::tr(
                   "The amount of water in the stage “%1” is above 0: correct it, or leave it "
                   "empty.")
            .arg(value.stage(0));
    case VarietyReason::LotUnknown:
        return Errors::tr("This seed lot is not in the journal any more: choose another one.");
    case VarietyReason::LotNumberMissing:
        return Errors::tr("The seed lot has no number: enter the one on its bag.");
    case VarietyReason::LotNumberTaken:
        return Errors::tr("This variety has a lot %1 already: check the number on the bag, or "
                          "change that lot.")
            .arg(value[0]);
    case VarietyReason::LotInUse:
        return Errors::tr("Trays were sown from lot %1, so it stays: mark it as used up instead.")
            .arg(value[0]);
    case VarietyReason::LotVarietyFixed:
        return Errors::tr("Trays were sown from lot %1, so it keeps its variety: enter another lot "
                          "for the other variety.")
            .arg(value[0]);
    case VarietyReason::LotGermination:
        return Errors::tr("Germination is so many seeds of a hundred: enter a number from 0 to "
                          "100, or leave the field empty.");
    case VarietyReason::LotBought:
        return Errors::tr(
            "The weight bought is above 0: enter what the bag held, or leave the field empty.");
    case VarietyReason::LotPrice:
        return Errors::tr(
            "A price is not below 0: enter what all of the lot cost, or leave the field empty.");
    case VarietyReason::LotFound:
        return Errors::tr(
            "What is left of a lot can't weigh less than nothing: weigh its bag again.");
    case VarietyReason::LotBoughtUnknown:
        return Errors::tr("The weight of lot %1 when it was bought is not written down, so nothing "
                          "can be held against it: enter that weight first.")
            .arg(value[0]);
    }
    return {};
}

} // namespace plumule::ui
