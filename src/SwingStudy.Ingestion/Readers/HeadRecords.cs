using System.Collections;

namespace SwingStudy.Ingestion.Readers;

/// <summary>The first records of a file. Each is read when it is first asked for, since the headings mostly stand within a few lines.</summary>
/// <param name="source">The records.</param>
internal sealed class HeadRecords(IEnumerable<HeadRecord> source) : IEnumerable<HeadRecord>, IDisposable
{
    private readonly IEnumerator<HeadRecord> _source = source.GetEnumerator();
    private readonly List<HeadRecord> _read = [];

    /// <summary>The record of a position that <see cref="Has"/>.</summary>
    public HeadRecord this[int index] => Has(index) ? _read[index] : throw new ArgumentOutOfRangeException(nameof(index), index, "There are fewer records.");

    /// <summary>Whether there are more records than <paramref name="index"/>.</summary>
    public bool Has(int index)
    {
        while (_read.Count <= index && _source.MoveNext())
            _read.Add(_source.Current);
        return index < _read.Count;
    }

    /// <inheritdoc/>
    public IEnumerator<HeadRecord> GetEnumerator()
    {
        for (var i = 0; Has(i); i++)
            yield return _read[i];
    }

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <summary>Reads no further.</summary>
    public void Dispose() => _source.Dispose();
}
