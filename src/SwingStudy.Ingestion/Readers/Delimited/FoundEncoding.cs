using System.Text;

namespace SwingStudy.Ingestion.Readers.Delimited;

/// <summary>The encoding of a file, checked against every byte of it.</summary>
/// <param name="Encoding">Decodes strictly: it never replaces a character.</param>
/// <param name="Name">IANA name.</param>
/// <param name="Basis">How it is known.</param>
/// <param name="MarkLength">Bytes of the byte order mark.</param>
internal sealed record FoundEncoding(Encoding Encoding, string Name, string Basis, int MarkLength);
