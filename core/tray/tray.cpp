#include "core/tray/tray.h"

namespace plumule {

const char* toText(TrayState state)
{
    switch (state) {
    case TrayState::Growing:
        return "growing";
    case TrayState::Harvested:
        return "harvested";
    case TrayState::Discarded:
        return "discarded";
    }
    return "";
}

bool fromText(std::string_view text, TrayState& state)
{
    for (const TrayState one : {TrayState::Growing, TrayState::Harvested, TrayState::Discarded}) {
        if (text == toText(one)) {
            state = one;
            return true;
        }
    }
    return false;
}

const char* toText(ReadFrom from)
{
    return from == ReadFrom::Surface ? "surface" : "rim";
}

bool fromText(std::string_view text, ReadFrom& from)
{
    for (const ReadFrom one : {ReadFrom::Surface, ReadFrom::Rim}) {
        if (text == toText(one)) {
            from = one;
            return true;
        }
    }
    return false;
}

} // namespace plumule
