// SPDX-License-Identifier: GPL-3.0-or-later
// The sections of the build sheet, one function each, and the words they share. Used by
// build_sheet.cpp alone.
#pragma once

#include "core/checks/check.h"
#include "core/parts/assembly.h"
#include "core/parts/figures.h"
#include "core/parts/questions.h"
#include "core/records/records.h"
#include "core/sheet/document.h"
#include "core/sheet/working.h"

#include <QDate>

#include <functional>
#include <span>
#include <vector>

namespace ohmwright::sections {

struct Sources
{
    const Records &records;
    const AssemblyTree &tree;
    QDate today;
    const std::function<QByteArray(const Plot &)> &plotPicture;
    std::span<const Check> checks;   // worst first within what they protect
    std::vector<Question> questions; // open ones, whoever asks
    Working working = Working::Short;
};

using Blocks = std::vector<sheet::Block>;

void addVehicle(const Sources &from, Blocks &to);
void addLostFunctions(const Sources &from, Blocks &to);
void addDonors(const Sources &from, Blocks &to);
void addComponents(const Sources &from, Blocks &to);
void addCircuits(const Sources &from, Blocks &to);
void addConductors(const Sources &from, Blocks &to);
void addMasses(const Sources &from, Blocks &to);
void addChecks(const Sources &from, Blocks &to);
void addChecksWorked(const Sources &from, Blocks &to);
void addSafetySystems(const Sources &from, Blocks &to);
void addInterfaces(const Sources &from, Blocks &to);
void addWires(const Sources &from, Blocks &to);
void addPermits(const Sources &from, Blocks &to);
void addTests(const Sources &from, Blocks &to);
void addApprovals(const Sources &from, Blocks &to);
void addPhotos(const Sources &from, Blocks &to);
void addDocuments(const Sources &from, Blocks &to);
void addOpenPoints(const Sources &from, Blocks &to);
void addCautions(Blocks &to);
void addSignatures(Blocks &to);

// Shared words ---------------------------------------------------------------------------------

// "not known" when there is none.
QString textOf(const std::optional<Amount> &amount);
QString textOf(const std::optional<QDate> &date);
// "nameplate, photo 3, read 2 Mar 2026".
QString evidenceText(const Rating &rating);
// What is in the vehicle or meant for it: not gone, not a tool, consumable or service, at hand.
bool isComponent(const Part &part);
sheet::Mark markOf(const Figure &figure);

} // namespace ohmwright::sections
