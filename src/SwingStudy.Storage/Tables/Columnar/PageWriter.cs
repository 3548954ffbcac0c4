using System.Buffers;
using System.Buffers.Binary;
using Parquet.Meta;
using SwingStudy.Domain.Tables;
using ZstdSharp;
using ParquetType = Parquet.Meta.Type;

namespace SwingStudy.Storage.Tables.Columnar;

/// <summary>Puts the pages of one column chunk after the other together: levels, values, compression. Its buffers serve all chunks.</summary>
/// <remarks>Source: Apache Parquet, Encodings.md and parquet.thrift (PageHeader).</remarks>
internal sealed class PageWriter : IDisposable
{
    private const int DataPage = 0, DictionaryPage = 2;
    private readonly Compressor _compressor = new();
    private readonly ArrayBufferWriter<byte> _pages = new(1 << 16);
    private readonly ArrayBufferWriter<byte> _runs = new(1 << 12);
    private byte[] _compressed = [];
    private int _uncompressed;
    private int _dictionarySize;

    /// <summary>Takes the values of the data page, behind its levels.</summary>
    internal ArrayBufferWriter<byte> Data { get; } = new(1 << 16);

    /// <summary>Serves for texts before they are appended to the data page; empty it first.</summary>
    internal ArrayBufferWriter<byte> Texts { get; } = new(1 << 12);

    /// <summary>Serves for finding the distinct numbers of a column.</summary>
    internal DistinctNumbers Numbers { get; } = new();

    /// <summary>Forgets the chunk before.</summary>
    internal void Begin()
    {
        _pages.ResetWrittenCount();
        Data.ResetWrittenCount();
        (_uncompressed, _dictionarySize) = (0, 0);
    }

    /// <summary>Writes the dictionary page, which comes first.</summary>
    internal void WriteDictionary(ReadOnlySpan<byte> values, int count, int compression)
    {
        Page(DictionaryPage, 7, count, Encoding.PLAIN_DICTIONARY, values, compression);
        _dictionarySize = _pages.WrittenCount;
    }

    /// <summary>Appends levels of that many bits to the data page: repetition first, then definition.</summary>
    internal void WriteLevels(ReadOnlySpan<int> levels, int bits)
    {
        _runs.ResetWrittenCount();
        HybridRuns.Write(_runs, levels, bits);
        BinaryPrimitives.WriteInt32LittleEndian(Data.GetSpan(sizeof(int)), _runs.WrittenCount);
        Data.Advance(sizeof(int));
        Data.Write(_runs.WrittenSpan);
    }

    /// <summary>Closes the data page and with it the chunk.</summary>
    /// <param name="type">Physical type.</param>
    /// <param name="path">Names from the root of the schema to the column.</param>
    /// <param name="values">Values with the missing ones.</param>
    /// <param name="encoding">How the values were written.</param>
    /// <param name="compression">Level of zstd.</param>
    internal EncodedChunk End(ParquetType type, IReadOnlyList<string> path, int values, Encoding encoding, int compression)
    {
        Page(DataPage, 5, values, encoding, Data.WrittenSpan, compression);
        return new EncodedChunk(_pages.WrittenSpan.ToArray(), type, [encoding, Encoding.RLE], path, values, _uncompressed, _dictionarySize);
    }

    /// <inheritdoc/>
    public void Dispose() => _compressor.Dispose();

    private void Page(int kind, int headerField, int values, Encoding encoding, ReadOnlySpan<byte> content, int compression)
    {
        var bound = Compressor.GetCompressBound(content.Length);
        if (_compressed.Length < bound)
            _compressed = GC.AllocateUninitializedArray<byte>(bound);
        _compressor.Level = compression;
        var compressed = _compressed.AsSpan(0, _compressor.Wrap(content, _compressed));
        var header = new CompactThrift();
        header.WriteInt(1, kind);
        header.WriteInt(2, content.Length);
        header.WriteInt(3, compressed.Length);
        header.WriteStruct(headerField, () =>
        {
            header.WriteInt(1, values);
            header.WriteInt(2, (int)encoding);
            if (kind != DataPage)
                return;
            header.WriteInt(3, (int)Encoding.RLE);
            header.WriteInt(4, (int)Encoding.RLE);
        });
        header.End();
        var headerBytes = header.ToArray();
        _pages.Write(headerBytes);
        _pages.Write(compressed);
        _uncompressed += headerBytes.Length + content.Length;
    }
}
