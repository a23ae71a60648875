#pragma once

#include <hpdf.h>
#include <hpdf_streams.h>
#include <memory>
#include <string>
#include <type_traits>

namespace benchcard::pdf {

/// The first thing that went wrong in a document: the library reports every call after it too.
struct first_error {
    HPDF_STATUS code = 0;
    HPDF_STATUS detail = 0;
};

struct document_deleter {
    void operator()(HPDF_Doc document) const noexcept { HPDF_Free(document); }
};

/// A document of the PDF library, freed whole at the end of its life.
using owned_document = std::unique_ptr<std::remove_pointer_t<HPDF_Doc>, document_deleter>;

/// A new, empty document that writes its first error to `error`, which must outlive it.
owned_document new_document(first_error& error);

/// The finished file of a document; empty after an error, which the document has reported. It goes
/// to memory, since the library takes a full disk for a success; by a way of our own, since the
/// library's to memory is four times as slow. Throws std::bad_alloc where there is no room.
std::string saved(HPDF_Doc document);

/// Puts all that was written to a stream in memory into `bytes`, instead of what is there. (The
/// library's own way to it copies byte by byte.)
void take_bytes(HPDF_Stream in_memory, std::string& bytes);

} // namespace benchcard::pdf
