// SPDX-License-Identifier: GPL-3.0-or-later
// Bonding: a test record of the resistance between an exposed conductive part and the chassis.
//
// Less than 0.1 Ω at a current of at least 0.2 A; a welded joint meets it by construction. Source:
// UN R100, 5.1.2.2.
#pragma once

#include "core/checks/given.h"
#include "core/checks/recorded_test.h"

namespace ohmwright {

struct BondingInputs
{
    QString part;               // key
    bool isWelded = false;      // then nothing else is asked for
    RecordedTest record;        //
    Given<Resistance> measured; // Ω, 0 or more, with the leads' own resistance taken off
    Given<Current> testCurrent; // A, above 0
    Threshold<Resistance> most{QStringLiteral("bonding.resistance"),
                               ohms(0.1),
                               QStringLiteral("UN R100, 5.1.2.2: less than 0.1 Ω"),
                               Tighter::Lower,
                               std::nullopt,
                               {}};
    Threshold<Current> leastCurrent{QStringLiteral("bonding.current"),
                                    amperes(0.2),
                                    QStringLiteral("UN R100, 5.1.2.2: at least 0.2 A"),
                                    Tighter::Higher,
                                    std::nullopt,
                                    {}};
};

// Id "bonding".
Check judgeBonding(const BondingInputs &inputs);

} // namespace ohmwright
