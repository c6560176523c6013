// SPDX-License-Identifier: GPL-3.0-or-later
// The judges of vehicle_judges.cpp: one check each, worked for everything in the book it is about.
#pragma once

#include "core/verdicts/book_inputs.h"

#include <vector>

namespace ohmwright {

std::vector<Check> judgeDriveOfBook(const BookInputs &inputs); // of each motor
std::vector<Check> judgeRangeOfBook(const BookInputs &inputs); // with a traction pack
std::vector<Check>
judgeRotatingPartsOfBook(const BookInputs &inputs); // couplings, and what is told
std::vector<Check> judgeBoltedFlangesOfBook(const BookInputs &inputs); // of parts with such figures
std::vector<Check> judgeAxleLoadsOfBook(const BookInputs &inputs);     // once masses are recorded
std::vector<Check> judgeBrakesOfBook(const BookInputs &inputs);        // likewise
std::vector<Check> judgeBrakesMeasuredOfBook(const BookInputs &inputs); // of each test of brakes
std::vector<Check> judgeRestraintsOfBook(const BookInputs &inputs);     // of each battery box
std::vector<Check> judgeFitsOfBook(const BookInputs &inputs);           // of each bay
std::vector<Check> judgeCoolingOfBook(const BookInputs &inputs);        // of each radiator

} // namespace ohmwright
