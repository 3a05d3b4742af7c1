#include "core/tray/stay_rules.h"

#include "core/base/moment_text.h"
#include "core/tray/tray_reason.h"

namespace plumule {

Done checkEnd(const std::optional<Stay>& open, Moment at)
{
    if (!open) {
        return {};
    }
    const Moment since{open->fromOn, open->fromMinute};
    return at < since ? fail(ErrorKind::Invalid, TrayReason::EndBeforeStay, textOf(since)) : Done();
}

} // namespace plumule
