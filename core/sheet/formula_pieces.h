// SPDX-License-Identifier: GPL-3.0-or-later
// A formula as written in plain text, cut where letters are lowered or raised: "m_f", "e^(-t/RC)".
#pragma once

#include <QString>

#include <vector>

namespace ohmwright::sheet {

enum class Lettered { OnLine, Lowered, Raised };

struct FormulaPiece
{
    QString text;
    Lettered place = Lettered::OnLine;
    bool operator==(const FormulaPiece &) const = default;
};

// "_" lowers the letters and digits after it, "^(" raises what the bracket holds; both need
// something to stand on. The pieces' texts together are the formula without those signs.
[[nodiscard]] std::vector<FormulaPiece> formulaPieces(const QString &formula);

} // namespace ohmwright::sheet
