// SPDX-License-Identifier: GPL-3.0-or-later
// The field lists of the records in trade.h: names as in the book and the interchange.
#pragma once

#include "core/records/trade.h"

namespace ohmwright {

template <>
struct RecordTraits<BudgetLine>
{
    static constexpr const char *table = "budget_line";
    static constexpr const char *plural = "budget_lines";
    static constexpr auto fields =
        std::tuple{field("key", &BudgetLine::key, Presence::Required),
                   field("name", &BudgetLine::name, Presence::Required),
                   field("allowance", &BudgetLine::allowance, Presence::Required),
                   field("position", &BudgetLine::position, Presence::Required),
                   field("note", &BudgetLine::note)};
};

template <>
struct RecordTraits<DayRate>
{
    static constexpr const char *table = "day_rate";
    static constexpr const char *plural = "day_rates";
    static constexpr auto fields = std::tuple{
        field("key", &DayRate::key, Presence::Required),
        field("currency", &DayRate::currency, Presence::Required),
        field("dated", &DayRate::on, Presence::Required),
        field("rate", &DayRate::rate, Presence::Required), field("source", &DayRate::source)};
};

template <>
struct RecordTraits<Purchase>
{
    static constexpr const char *table = "purchase";
    static constexpr const char *plural = "purchases";
    static constexpr auto fields =
        std::tuple{field("key", &Purchase::key, Presence::Required),
                   field("seller", &Purchase::seller, Presence::Required),
                   field("ordered_on", &Purchase::orderedOn, Presence::Required),
                   field("currency", &Purchase::currency, Presence::Required),
                   field("rate", &Purchase::rate, Presence::Required),
                   field("rate_source", &Purchase::rateSource),
                   field("freight", &Purchase::freight, Presence::Required),
                   field("duty", &Purchase::duty, Presence::Required),
                   field("tax", &Purchase::tax, Presence::Required),
                   field("share_by", &Purchase::shareBy, Presence::Required),
                   field("reference", &Purchase::reference),
                   field("promised_on", &Purchase::promisedOn),
                   field("arrived_on", &Purchase::arrivedOn),
                   field("note", &Purchase::note)};
};

template <>
struct RecordTraits<PurchaseItem>
{
    static constexpr const char *table = "purchase_item";
    static constexpr const char *plural = "items";
    static constexpr auto owners =
        std::tuple{owner("purchase_id", "items", &PurchaseItem::purchase)};
    static constexpr auto fields =
        std::tuple{field("key", &PurchaseItem::key, Presence::Required),
                   field("name", &PurchaseItem::name, Presence::Required),
                   field("count", &PurchaseItem::count, Presence::Required),
                   field("unit_price", &PurchaseItem::unitPrice, Presence::Required),
                   field("core_charge", &PurchaseItem::coreCharge, Presence::Required),
                   field("core_returned_on", &PurchaseItem::coreReturnedOn),
                   field("line", &PurchaseItem::line)};
};

template <>
struct RecordTraits<Payment>
{
    static constexpr const char *table = "payment";
    static constexpr const char *plural = "payments";
    static constexpr auto owners = std::tuple{owner("purchase_id", "payments", &Payment::purchase)};
    static constexpr auto fields = std::tuple{field("paid_on", &Payment::on, Presence::Required),
                                              field("amount", &Payment::amount, Presence::Required),
                                              field("note", &Payment::note)};
};

template <>
struct RecordTraits<GotBack>
{
    static constexpr const char *table = "got_back";
    static constexpr const char *plural = "got_back";
    static constexpr auto fields = std::tuple{field("key", &GotBack::key, Presence::Required),
                                              field("name", &GotBack::name, Presence::Required),
                                              field("amount", &GotBack::amount, Presence::Required),
                                              field("rate", &GotBack::rate, Presence::Required),
                                              field("expected_on", &GotBack::expectedOn),
                                              field("received_on", &GotBack::receivedOn),
                                              field("part", &GotBack::part),
                                              field("line", &GotBack::line),
                                              field("note", &GotBack::note)};
};

} // namespace ohmwright
