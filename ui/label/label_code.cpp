#include "ui/label/label_code.h"

#include <algorithm>
#include <memory>

#include <qrencode.h>

namespace plumule::ui {

namespace {

using CodeHandle = std::unique_ptr<QRcode, decltype(&QRcode_free)>;

constexpr unsigned kUtf8 = 26; // its number as an extended channel interpretation

CodeHandle encoded(const QByteArray& text, bool isPlain)
{
    if (isPlain) {
        return {QRcode_encodeString(text.constData(), 0, QR_ECLEVEL_M, QR_MODE_8,
                                    1 /* letter case is kept */),
                &QRcode_free};
    }
    // Without it readers take other letters for those of some other code page.
    const std::unique_ptr<QRinput, decltype(&QRinput_free)> input(QRinput_new2(0, QR_ECLEVEL_M),
                                                                  &QRinput_free);
    const bool isTaken =
        input && QRinput_appendECIheader(input.get(), kUtf8) == 0 &&
        QRinput_append(input.get(), QR_MODE_8, static_cast<int>(text.size()),
                       reinterpret_cast<const unsigned char*>(text.constData())) == 0;
    return {isTaken ? QRcode_encodeInput(input.get()) : nullptr, &QRcode_free};
}

} // namespace

std::optional<LabelCode> labelCode(const QString& text)
{
    if (text.isEmpty()) {
        return std::nullopt;
    }
    const QByteArray bytes = text.toUtf8();
    const bool isPlain =
        std::all_of(bytes.begin(), bytes.end(), [](char each) { return each > 0; });
    const CodeHandle code = encoded(bytes, isPlain);
    if (!code) {
        return std::nullopt;
    }
    LabelCode modules;
    modules.side = code->width;
    const auto count =
        static_cast<std::size_t>(code->width) * static_cast<std::size_t>(code->width);
    modules.dark.reserve(count);
    for (std::size_t i = 0; i < count; ++i) {
        modules.dark.push_back((code->data[i] & 1) != 0);
    }
    return modules;
}

} // namespace plumule::ui
