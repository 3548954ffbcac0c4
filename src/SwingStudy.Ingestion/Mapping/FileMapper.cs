using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Variables;
using SwingStudy.Ingestion.Mapping.Columns;
using SwingStudy.Ingestion.Mapping.Long;
using SwingStudy.Ingestion.Mapping.Rows;
using SwingStudy.Ingestion.Mapping.Times;
using SwingStudy.Ingestion.Readers;

namespace SwingStudy.Ingestion.Mapping;

/// <summary>Maps one opened file: binds the mapping to it, reads its blocks on several threads, and settles its times.</summary>
/// <param name="mapping">The mapping.</param>
/// <param name="dictionary">The variables.</param>
/// <param name="threads">Threads that may work at once; the result does not depend on it.</param>
internal sealed class FileMapper(SourceMapping mapping, VariableDictionary dictionary, int threads)
{
    private const int LongestTime = 96;

    /// <summary>All rows of the file, or all reasons why it is held.</summary>
    /// <param name="document">The opened file.</param>
    /// <param name="nameMatch">Match of the mapping's file pattern on its name.</param>
    /// <param name="choice">A person's decision for local times that occur twice.</param>
    /// <param name="progress">Is called whenever a block has been read.</param>
    public Outcome<MappedFile> Map(RecordDocument document, System.Text.RegularExpressions.Match? nameMatch, AmbiguousChoice? choice, Action? progress = null)
    {
        var shape = SheetShape.Of(document, nameMatch);
        if (mapping.LongForm is { } form)
        {
            var pivoted = LongPivot.Read(document, mapping, form, shape);
            return pivoted.Succeeded(out var pivot) ? MapPivot(document, pivot, choice) : Outcome<MappedFile>.Failed(pivoted.Problems);
        }

        var planned = PlanFor(mapping, shape, document.Blocks);
        if (!planned.Succeeded(out var plan))
            return Outcome<MappedFile>.Failed(planned.Problems);
        var blocks = MapBlocks(plan, document.Blocks(), progress, out var broken);
        return Settle(new FileAssembly(plan, shape, blocks, broken), document, choice);
    }

    private Outcome<MappedFile> MapPivot(RecordDocument document, LongPivot pivot, AmbiguousChoice? choice)
    {
        var planned = PlanFor(LongPivot.Pivoted(mapping), pivot.Shape, pivot.Blocks);
        if (!planned.Succeeded(out var plan))
            return Outcome<MappedFile>.Failed(planned.Problems);
        var blocks = MapBlocks(plan, pivot.Blocks(), null, out _);
        return Settle(new FileAssembly(plan, pivot.Shape, blocks, pivot.Broken, pivot), document, choice);
    }

    /// <summary>Plans at once where the format of times is declared; else first reads all times to find the one that fits.</summary>
    private Outcome<MappingPlan> PlanFor(SourceMapping bound, SheetShape shape, Func<IEnumerable<RawBlock>> blocks)
    {
        var planned = MappingPlanner.Plan(bound, dictionary, shape);
        if (!planned.Succeeded(out var plan))
            return planned;
        if (plan.Time.Format is null)
        {
            var found = FindFormat(plan, shape, blocks());
            if (!found.Succeeded(out var format))
                return Outcome<MappingPlan>.Failed(found.Problems);
            planned = MappingPlanner.Plan(bound, dictionary, shape, format);
            if (!planned.Succeeded(out plan))
                return planned;
        }

        return plan.Time.Format!.NeedsZone && mapping.Time.Zone is null ? MappingMessages.ZoneUnstated(mapping, shape) : planned;
    }

    private Outcome<TimeFormat> FindFormat(MappingPlan plan, SheetShape shape, IEnumerable<RawBlock> blocks)
    {
        var detector = new TimeFormatDetector();
        Span<char> text = stackalloc char[LongestTime];
        var texts = 0;
        var serials = 0;
        foreach (var block in blocks)
        {
            using (block)
            {
                for (var row = 0; row < block.RowCount; row++)
                {
                    if (!plan.NotData.IsEmpty && plan.NotData.Label(block, row) is not null)
                        continue;
                    if (plan.Time.TryJoin(block, row, text, out var length))
                    {
                        detector.Observe(text[..length]);
                        texts++;
                    }
                    else if (plan.Time.Read(block, row, out _, out _) == CellVerdict.Value)
                    {
                        serials++;
                    }
                }
            }
        }

        if (texts == 0 && serials > 0 && TimeFormat.TryCompile("excel-serial", out var serial, out _))
            return serial;
        var fitting = detector.Fitting;
        return texts == 0 || fitting.Count == 0
            ? MappingMessages.TimeUnknown(mapping, shape, detector.FirstMisfit)
            : fitting.Count > 1 ? MappingMessages.TimeAmbiguous(mapping, shape, fitting.Select(format => format.Text)) : fitting[0];
    }

    private MappedBlock[] MapBlocks(MappingPlan plan, IEnumerable<RawBlock> blocks, Action? progress, out List<RejectedRecord> broken)
    {
        var mapped = new List<MappedBlock?>();
        var rejected = new List<List<RejectedRecord>>();
        var gate = new Lock();
        using var source = blocks.GetEnumerator();

        // Dividing a file into cells goes in order; mapping the cells does not. Whoever is free takes the next block.
        void Work()
        {
            var mapper = new BlockMapper(plan);
            while (true)
            {
                RawBlock block;
                int place;
                lock (gate)
                {
                    if (!source.MoveNext())
                        return;
                    block = source.Current;
                    place = mapped.Count;
                    mapped.Add(null);
                    rejected.Add([.. block.Rejected]);
                    progress?.Invoke();
                }

                using (block)
                {
                    var result = mapper.Map(block);
                    lock (gate)
                        mapped[place] = result;
                }
            }
        }

        if (threads <= 1)
            Work();
        else
            Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, _ => Work());
        broken = [.. rejected.SelectMany(list => list)];
        return [.. mapped.Select(block => block!)];
    }

    private Outcome<MappedFile> Settle(FileAssembly assembly, RecordDocument document, AmbiguousChoice? choice)
    {
        var zone = mapping.Time.Zone is { } name
            ? ZoneNames.Find(name) ?? throw new InvalidOperationException($"The zone '{name}' of {mapping.File} was not checked.")
            : null;
        assembly.SettleTimes(zone, choice);
        assembly.CheckColumns();
        return assembly.Problems.Count > 0 ? Outcome<MappedFile>.Failed(assembly.Problems) : assembly.ToFile(document);
    }
}
