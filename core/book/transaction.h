// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/book/statement.h"

#include <sqlite3.h>

namespace ohmwright {

// Rolls back unless told otherwise; an early return inside leaves the book as it was.
class Transaction
{
public:
    explicit Transaction(sqlite3 *db) : m_db(db) {}
    ~Transaction()
    {
        // a failed commit may already have ended it
        if (m_open && sqlite3_get_autocommit(m_db) == 0)
            (void)Statement::runScript(m_db, "ROLLBACK");
    }
    Transaction(const Transaction &) = delete;
    Transaction &operator=(const Transaction &) = delete;

    Outcome begin()
    {
        Outcome done = Statement::runScript(m_db, "BEGIN IMMEDIATE");
        m_open = done.has_value();
        return done;
    }
    Outcome commit()
    {
        Outcome done = Statement::runScript(m_db, "COMMIT");
        if (done)
            m_open = false;
        return done;
    }

private:
    sqlite3 *m_db;
    bool m_open = false;
};

} // namespace ohmwright
