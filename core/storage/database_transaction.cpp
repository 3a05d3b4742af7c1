// Part of core/storage/database.h: transactions.
#include "core/storage/database.h"

namespace plumule {

Transaction::Transaction(Database& database)
    : m_database(database)
{
    m_database.checkFileIsThere();
    m_database.prepare("BEGIN IMMEDIATE").run();
    // What was known of the counter before this lock was taken is read anew.
    m_database.forgetCounter();
    m_isOpen = true;
}

Transaction::~Transaction()
{
    if (m_isOpen) {
        try {
            rollback();
        } catch (const StorageFailure&) {
            // SQLite has rolled back by itself (disk full, I/O): nothing is left to undo.
            m_isOpen = false;
        }
    }
}

void Transaction::commit()
{
    try {
        m_database.storeCounter();
        m_database.checkFileIsThere();
        m_database.prepare("COMMIT").run();
        m_isOpen = false;
    } catch (const StorageFailure&) {
        if (m_database.isInTransaction()) {
            rollback();
        }
        m_isOpen = false;
        m_database.forgetCounter();
        throw;
    }
}

void Transaction::rollback()
{
    m_isOpen = false;
    m_database.forgetCounter();
    m_database.m_counterMoved = false;
    if (m_database.isInTransaction()) {
        m_database.execute("ROLLBACK");
    }
}

ReadTransaction::ReadTransaction(Database& database)
    : m_database(database.isInTransaction() ? nullptr : &database)
{
    if (m_database != nullptr) {
        m_database->prepare("BEGIN").run();
    }
}

ReadTransaction::~ReadTransaction()
{
    if (m_database == nullptr || !m_database->isInTransaction()) {
        return;
    }
    try {
        m_database->prepare("COMMIT").run();
    } catch (const StorageFailure&) {
        // Nothing was written, so that there is nothing to lose where SQLite refuses.
    }
}

} // namespace plumule
