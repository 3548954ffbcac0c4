using SwingStudy.Domain.Identifiers;

namespace SwingStudy.Pipeline.Export;

/// <summary>One file of an export.</summary>
/// <param name="Path">Path relative to the export folder, with forward slashes.</param>
/// <param name="Format"><c>csv</c>, <c>parquet</c> or <c>arrow</c>.</param>
/// <param name="Bytes">Size.</param>
/// <param name="Hash">SHA-256 of the bytes.</param>
public sealed record ExportedFile(string Path, string Format, long Bytes, Sha256 Hash);
