namespace SwingStudy.Tests.Reference;

public class ReferenceCaseTests
{
    public static TheoryData<string> Ids => [.. ReferenceCases.All.Select(c => c.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void TheReferenceCaseIsMetAtItsTolerance(string id)
    {
        var reference = ReferenceCases.Find(id);
        var kinds = CaseKinds.All.Where(k => k.Matches(reference)).ToList();
        Assert.True(kinds.Count == 1, $"{id} must be of exactly one kind, but is of {kinds.Count}: {string.Join(", ", kinds.Select(k => k.Name))}");
        var mismatches = Expectation.Mismatches(reference, kinds[0].Compute(reference));
        Assert.True(mismatches.Count == 0, $"{id} ({kinds[0].Name}):\n" + string.Join('\n', mismatches));
    }

    [Fact]
    public void EveryCaseHasAnIdOfItsOwn() =>
        Assert.Equal(ReferenceCases.All.Count, ReferenceCases.All.Select(c => c.Id).Distinct().Count());
}
