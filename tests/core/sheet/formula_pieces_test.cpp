// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/formula_pieces.h"

#include <gtest/gtest.h>

namespace ohmwright::sheet {
namespace {

// "m[_f]": lowered; "e[^-t/RC]": raised.
QString told(const char *formula)
{
    QString text;
    for (const FormulaPiece &piece : formulaPieces(QString::fromUtf8(formula)))
        text += piece.place == Lettered::OnLine ? piece.text
                : piece.place == Lettered::Lowered
                    ? QString(QStringLiteral("[_") + piece.text + u']')
                    : QString(QStringLiteral("[^") + piece.text + u']');
    return text;
}

TEST(FormulaPieces, LowerIndicesAndRaisePowers)
{
    EXPECT_EQ(told("m_f = m·l_r/l"), QStringLiteral("m[_f] = m·l[_r]/l"));
    EXPECT_EQ(told("F_v/F_v,R + F_t/(1.4·F_t,R)"),
              QStringLiteral("F[_v]/F[_v,R] + F[_t]/(1.4·F[_t,R])"));
    EXPECT_EQ(told("U·e^(−t/(R·C))"), QStringLiteral("U·e[^−t/(R·C)]"));
    EXPECT_EQ(told("max(U_i, U_j)"), QStringLiteral("max(U[_i], U[_j])"));
    EXPECT_EQ(told("θ_f"), QStringLiteral("θ[_f]"));
}

TEST(FormulaPieces, LeaveAloneWhatIsNone)
{
    EXPECT_EQ(told(""), QString());
    EXPECT_EQ(told("by axle loads"), QStringLiteral("by axle loads"));
    EXPECT_EQ(told("_x and ^(2)"), QStringLiteral("_x and ^(2)"));
    EXPECT_EQ(told("a_ b^(c"), QStringLiteral("a_ b^(c"));
    EXPECT_EQ(told("x²"), QStringLiteral("x²"));
}

} // namespace
} // namespace ohmwright::sheet
