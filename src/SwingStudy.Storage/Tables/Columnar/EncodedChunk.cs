using Parquet.Meta;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>One column of a row group as bytes that can stand anywhere in a file.</summary>
/// <param name="Content">Its pages.</param>
/// <param name="Type">Physical type.</param>
/// <param name="Encodings">Encodings in use.</param>
/// <param name="Path">Names from the root of the schema to the column.</param>
/// <param name="Values">Values with the missing ones; samples for lists.</param>
/// <param name="UncompressedSize">Bytes before compression, page headers included.</param>
/// <param name="DictionarySize">Bytes of the dictionary page, which comes first; 0 without one.</param>
internal sealed record EncodedChunk(
    ReadOnlyMemory<byte> Content, Parquet.Meta.Type Type, IReadOnlyList<Encoding> Encodings, IReadOnlyList<string> Path, long Values, long UncompressedSize, int DictionarySize)
{
    /// <summary>Bytes in the file.</summary>
    internal int Size { get; private init; } = Content.Length;

    /// <summary>The description without the bytes.</summary>
    internal EncodedChunk WithoutContent() => this with { Content = default };
}
